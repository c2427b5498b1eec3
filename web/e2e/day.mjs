// The day: promise and place, search, clock, calendar, pay sheet, the shop out and in, a customer's data.
import assert from 'node:assert/strict';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WIDTHS } from './browser.mjs';
import { markDamage } from './job.mjs';
import { startServer } from './server.mjs';

async function call(server, method, path, body) {
  const answer = await fetch(server.base + path, { method, headers: { 'content-type': 'application/json' }, body: body && JSON.stringify(body) });
  assert.ok(answer.ok, `${method} ${path}: ${answer.status} ${await answer.clone().text()}`);
  return answer.status === 204 ? null : answer.json();
}

const day = (days) => {
  const date = new Date(Date.now() + days * 86_400_000);
  return `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
};
const ago = (hours) => new Date(Date.now() - hours * 3600_000).toISOString();

/** The clock's entries when the record knows that all have stopped: the page shows it before. */
async function stopped(server, job) {
  for (;;) {
    const { entries } = await call(server, 'GET', `/api/jobs/${job}/times`);
    if (entries.every((entry) => entry.stopped)) return entries;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Jobs of every kind of promise. */
async function fill(server) {
  const job = (plate, other) => call(server, 'POST', '/api/jobs', { customer: { name: `Owner of ${plate} (invented)`, address: '', phone: '', email: '' }, car: { plate, make: 'Vardo', model: 'Kombi' }, ...other });
  await job('EX 1', { promised: day(-2), place: 'Hall, bay 1' });
  await job('EX 2', { promised: day(0), promised_time: '23:59', place: 'Yard' });
  await job('EX 3', { promised: day(1), promised_time: '08:00', place: 'hall, bay 1', notes: 'key at the porter' });
  const done = await job('EX 4', { promised: day(-1) });
  await call(server, 'PATCH', `/api/jobs/${done.id}`, { stage: 'finished' });
  return done.id;
}

export async function theDay({ browser, page, server, test, sound }) {
  let job;
  await test('a car gets a promise with its hour, and a place', async () => {
    await page.goto('/#/new');
    await page.getByLabel('Promised for').fill(day(0));
    await page.getByLabel('At', { exact: true }).fill('00:00');
    await page.getByLabel('Where it stands').fill('Tent 3');
    await page.getByLabel('Customer').fill('Clock (invented)');
    await page.getByLabel('Plate').fill('EX 77 T');
    await page.getByLabel('Phone').fill('+00 555 0177');
    await page.getByRole('button', { name: 'To the damage' }).click();
    await page.getByRole('heading', { name: 'Where is the damage?' }).waitFor();
    await markDamage(page, 'bonnet');
    await page.getByRole('button', { name: 'Count one of 15 mm' }).click();
    await page.getByText('Round, 15 mm').waitFor();
    job = page.url().split('/jobs/')[1].split('/')[0];
    await fill(server);
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: the list stands by promise, and says in words what is late`, async () => {
      await page.setViewportSize({ width, height });
      await page.goto('/#/');
      await page.getByLabel('In order of').selectOption('promise');
      await page.getByRole('heading', { name: /^Late/ }).waitFor();
      const late = page.getByRole('region', { name: 'Late' });
      await late.getByText('2 days late').waitFor();
      await late.getByText('late since 00:00').waitFor();
      await page.getByRole('region', { name: 'Today' }).getByText('today, 23:59').waitFor();
      await page.getByRole('region', { name: 'Work done' }).getByText('EX 4', { exact: true }).waitFor();
      await sound(page, `${name}-day-list`);
    });
  }
  await test('by place, and found by a word of the notes', async () => {
    await page.getByLabel('In order of').selectOption('place');
    const hall = page.getByRole('region', { name: /hall, bay 1/i });
    await hall.getByText('EX 3', { exact: true }).waitFor();
    assert.equal(await hall.getByRole('link').count(), 2);
    await page.getByLabel('Find').fill('porter');
    await page.waitForFunction(() => document.querySelectorAll('ul.list a').length === 1);
    await page.getByLabel('Find').fill('ex77t');
    await page.getByText('Tent 3').first().waitFor();
    await page.getByLabel('Find').fill('');
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: the clock starts, changes over, stops, and is undone`, async () => {
      await page.setViewportSize({ width, height });
      await page.goto(`/#/jobs/${job}/time`);
      const clock = page.getByTestId('clock');
      await clock.getByRole('button', { name: /^Push/ }).click();
      await clock.locator('[aria-pressed=true]', { hasText: 'Push' }).waitFor();
      await clock.getByRole('button', { name: /^Tap/ }).click();
      await clock.locator('[aria-pressed=true]', { hasText: 'Tap' }).waitFor();
      await page.getByRole('status').getByRole('button', { name: 'Undo' }).last().click();
      await clock.locator('[aria-pressed=true]', { hasText: 'Push' }).waitFor();
      await page.waitForFunction(() => /0:0[1-9]/.test(document.querySelector('[aria-pressed=true]')?.textContent ?? ''));
      await sound(page, `${name}-day-clock`);
      await page.goto(`/#/jobs/${job}/quote`);
      await page.getByRole('button', { name: 'Stop' }).click();
      await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
      for (const entry of await stopped(server, job)) await call(server, 'DELETE', `/api/times/${entry.id}`);
      await page.reload();
    });
  }
  await test('a clock set back and one left overnight are told, and set right by hand', async () => {
    const [a, b] = await Promise.all([{ kind: 'push', started: ago(5) }, { kind: 'glue', started: ago(30) }].map((one) => call(server, 'POST', `/api/jobs/${job}/times`, { ...one, id: crypto.randomUUID(), stopped: one.kind === 'push' ? ago(6) : ago(17) })));
    assert.ok(a.entry && b.entry);
    await page.goto(`/#/jobs/${job}`);
    await page.goto(`/#/jobs/${job}/time`);
    await page.getByText('2 entries are in doubt').waitFor();
    await page.getByText('This entry ends before it begins').waitFor();
    await page.getByText('13 h at a stretch').waitFor();
    await sound(page, 'day-doubt');
    const back = page.getByTestId('times').locator('li', { hasText: 'Push' });
    await back.getByRole('button', { name: 'Correct' }).click();
    await back.getByLabel('Until').fill((await back.getByLabel('From').inputValue()).replace(/T.*/, 'T00:00'));
    await back.getByRole('button', { name: 'Save' }).click();
    await back.locator('.trouble').waitFor();
    const from = new Date(ago(5));
    from.setMinutes(from.getMinutes() + 90);
    const local = new Date(from.getTime() - from.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
    await back.getByLabel('Until').fill(local);
    await back.getByRole('button', { name: 'Save' }).click();
    await page.getByText('One entry is in doubt').waitFor();
    await page.getByTestId('times').locator('li', { hasText: 'Glue' }).getByRole('button', { name: 'It is right as it stands' }).click();
    await page.getByText('One entry is in doubt').waitFor({ state: 'detached' });
    assert.match(await page.getByTestId('time-sum').textContent(), /^14\sh (29|30)\smin$/);
    await page.getByTestId('shares').getByText('Glue').waitFor();
  });
  await test('the clock’s sum is offered where worked time is learned', async () => {
    await page.goto(`/#/jobs/${job}/quote`);
    const card = page.getByTestId('worked');
    await card.getByRole('button', { name: /Take 14\sh (29|30)\smin from the clock/ }).click();
    assert.match(await card.getByRole('textbox').inputValue(), /^14\.(4|5)/);
    await card.getByRole('button', { name: 'Learn from it' }).click();
    await card.getByText(/Worked 14\sh/).waitFor();
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: crew and pay sheet`, async () => {
      await page.setViewportSize({ width, height });
      await page.goto('/#/settings/crew');
      const first = page.locator('form').first();
      await first.getByRole('radio', { name: 'by the hour' }).check();
      await first.getByRole('textbox', { name: /^Pay of an hour/ }).fill('20,00');
      await first.getByRole('button', { name: 'Save' }).click();
      await page.getByText('Saved').first().waitFor();
      await sound(page, `${name}-day-crew`);
      await page.goto('/#/pay');
      await page.getByLabel('From', { exact: true }).fill(day(-3));
      await page.getByLabel(/^Until/).fill(day(0));
      await page.getByText(/14\sh (29|30)\smin clocked/).waitFor();
      await page.getByText(/€2(89|90)\.\d\d/).first().waitFor();
      await page.getByText(/nobody clocked on it/).waitFor();
      await sound(page, `${name}-day-pay`);
    });
  }
  await test('the pay sheet and the tables are CSV', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Save as a table (CSV)' }).click()]);
    assert.match(await readFile(await download.path(), 'utf8'), /^technician,from,until,clocked_h,jobs_done,paid_by,rate_or_percent,pay,currency\r\n/);
    await page.goto('/#/settings/data');
    const [jobs] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Jobs', exact: true }).click()]);
    assert.match(await readFile(await jobs.path(), 'utf8'), /EX 77 T/);
  });
  await test('the calendar holds what was promised', async () => {
    await page.goto('/#/settings/data');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Save the calendar file' }).click()]);
    const text = await readFile(await download.path(), 'utf8');
    assert.ok(text.startsWith('BEGIN:VCALENDAR\r\n') && text.includes('LOCATION:Tent 3'), text.slice(0, 400));
  });
  await test('the whole shop goes out and comes into an empty one, once', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: 'Save the archive' }).click()]);
    const path = join(server.folder, 'shop.zip');
    await download.saveAs(path);
    const spoiled = join(server.folder, 'spoiled.zip');
    const bytes = await readFile(path);
    await writeFile(spoiled, bytes.subarray(0, Math.floor(0.7 * bytes.length)));
    const all = (await call(server, 'GET', '/api/jobs')).length;
    const other = await startServer();
    try {
      const there = await (await browser.newContext({ baseURL: other.base })).newPage();
      await there.goto('/#/settings/data');
      await there.getByLabel('Take an archive in').setInputFiles(spoiled);
      await there.locator('.trouble').waitFor();
      assert.deepEqual(await call(other, 'GET', '/api/jobs'), []);
      await there.getByLabel('Take an archive in').setInputFiles(path);
      await there.getByTestId('imported').getByText(`${all} jobs taken in`).waitFor();
      assert.deepEqual(await call(other, 'GET', '/api/jobs'), await call(server, 'GET', '/api/jobs'));
      await there.getByLabel('Take an archive in').setInputFiles(path);
      await there.getByTestId('imported').getByText(`0 jobs taken in, ${all} were here already`).waitFor();
      await there.context().close();
    } finally {
      await other.stop();
    }
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: where data goes out and in`, async () => {
      await page.setViewportSize({ width, height });
      await page.goto('/#/settings/data');
      await page.getByRole('heading', { name: 'Calendar, tables, archive' }).waitFor();
      await sound(page, `${name}-day-data`);
    });
    await test(`${name}: a customer's data: said before, ordered, called off`, async () => {
      await page.goto(`/#/jobs/${job}/erase`);
      await page.getByRole('heading', { name: 'What stays' }).waitFor();
      await sound(page, `${name}-day-erase`);
      await page.getByRole('button', { name: 'Delete from this job' }).click();
      await page.getByRole('button', { name: 'Call it off' }).click();
      await page.getByRole('heading', { name: 'What goes' }).waitFor();
      assert.equal((await call(server, 'GET', `/api/jobs/${job}`)).customer.name, 'Clock (invented)');
    });
  }
}
