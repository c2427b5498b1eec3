// What a car came with: photos, paint, old damage, the signature; what cannot be gets a clear word and nothing is lost.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { allSent, call, dentsOf } from './hail.mjs';
import { markDamage, takeIn } from './job.mjs';
import { sign } from './papers.mjs';

const jobOf = (page) => page.url().match(/jobs\/([^/]+)/)[1];
const photo = (page) =>
  page.evaluate(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 320, height: 200 });
    canvas.getContext('2d').fillRect(20, 20, 90, 60);
    return canvas.toDataURL('image/jpeg').split(',')[1];
  });

export async function arrivalOfACar({ page, server, test, sound }) {
  let job = '';
  await test('the photo checklist is ticked by taking the photo', async () => {
    await takeIn(page, { name: 'As It Came (invented)', plate: 'EX 5' });
    job = jobOf(page);
    await page.getByRole('link', { name: 'As it came' }).click();
    await page.getByText('0 of 8').waitFor();
    const buffer = Buffer.from(await photo(page), 'base64');
    for (const shot of ['Front left, with plate', 'Instruments, with odometer']) await page.getByLabel(shot).setInputFiles([{ name: 'a.jpg', mimeType: 'image/jpeg', buffer }]);
    await page.getByText('2 of 8').waitFor();
    await allSent(page);
    await page.getByText('Taken', { exact: true }).first().waitFor();
    assert.equal((await call(server, `/api/jobs/${job}/take-in`)).photos.length, 2);
  });
  await test('a panel whose paint differs stands out, by the same rule here and on the server', async () => {
    const read = async (panel, value) => {
      await page.getByRole('combobox', { name: 'Panel', exact: true }).selectOption({ label: panel });
      await page.getByLabel('Thickness').fill(value);
      await page.getByRole('button', { name: 'Keep the reading' }).click();
    };
    for (const [panel, value] of [['Bonnet', '262'], ['Roof', '118'], ['Boot lid', '112'], ['Front door, left', '124'], ['Front wing, left', '120,5']]) await read(panel, value);
    const list = page.getByTestId('paint');
    await list.getByText('Thicker than the car’s other panels', { exact: false }).waitFor();
    assert.equal(await list.locator('li.thick').count(), 1);
    assert.match(await list.locator('li.thick').textContent(), /Bonnet.*262\sµm.*119\sµm in the middle/s);
    await allSent(page);
    const judged = (await call(server, `/api/jobs/${job}/take-in`)).judged;
    assert.deepEqual(judged.map((one) => [one.panel, one.says]).filter(([, says]) => says !== 'usual'), [['bonnet', 'thick']]);
    await page.getByLabel('Thickness').fill('-40');
    await page.getByText('A thickness over 0', { exact: false }).waitFor();
    await page.getByLabel('Thickness').press('Enter');
    assert.equal(await list.locator('li').count(), 5);
    await page.getByLabel('Thickness').fill('');
  });
  await test('the metal of a panel is kept with the car', async () => {
    await page.getByRole('combobox', { name: 'Panel', exact: true }).selectOption({ label: 'Bonnet' });
    await page.getByRole('radio', { name: 'Aluminium', exact: true }).check();
    await allSent(page);
    assert.deepEqual((await call(server, `/api/jobs/${job}`)).car.metals, { bonnet: 'aluminium' });
  });
  await test('old damage is marked, taken back, and signed as it was shown', async () => {
    const mark = async (panel, kind) => {
      await page.getByLabel('Or from the list').selectOption(panel);
      await page.getByTestId('place-pad').click();
      await page.getByRole('radio', { name: kind }).check();
      await page.getByRole('button', { name: 'Old damage is here' }).click();
    };
    await mark('front_bumper', 'Stone chip');
    await mark('sill_left', 'Rust');
    await page.getByRole('button', { name: 'Remove the mark: Sill, left' }).click();
    await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await page.getByText('2 old damages are marked').waitFor();
    await page.getByLabel('Language of the customer').selectOption('de');
    await page.locator('ul.told[lang=de] li', { hasText: 'Lack' }).first().waitFor();
    await page.getByRole('button', { name: 'Keep what was signed' }).click();
    await page.getByText('Nobody has signed', { exact: false }).waitFor();
    await sign(page);
    await page.getByRole('button', { name: 'Keep what was signed' }).click();
    await page.getByText(/Signed by As It Came.*with 2 old damages/).waitFor();
    await allSent(page);
    const { signed } = await call(server, `/api/jobs/${job}/take-in`);
    assert.deepEqual([signed.old.length, signed.name, signed.consent.length > 6], [2, 'As It Came (invented)', true]);
    assert.ok(signed.consent.some((line) => /BGB/.test(line)), 'the country has a line of its own');
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: as it came`, async () => {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-arrival`);
    });
  }
  await test('the authorisation lists the old damage', async () => {
    const papers = `/api/jobs/${job}/papers`;
    const signature = { name: 'As It Came', at: '2026-11-26T08:00:00Z', strokes: [[[0.1, 0.2], [0.8, 0.2]]] };
    const paper = await call(server, papers, 'POST', { kind: 'authorisation', language: 'en', signature });
    assert.ok(paper.files.length > 0);
  });
}

export async function badEntries({ page, server, test, sound }) {
  const shown = () => page.locator('.total').textContent();
  await test('a negative size is refused in words, and what was typed stays', async () => {
    await takeIn(page, { name: 'Bad Entries (invented)' });
    await markDamage(page, 'roof');
    await page.getByRole('radio', { name: 'Type it' }).check();
    await page.getByLabel(/^Across/).fill('-12');
    await page.getByText('A number over zero').waitFor();
    await page.getByRole('button', { name: 'Count it' }).click();
    assert.equal(await shown(), '0');
    await page.reload();
    assert.equal(await page.getByLabel(/^Across/).inputValue(), '-12');
    await page.getByLabel(/^Across/).fill('12');
    await page.getByRole('button', { name: 'Count it' }).click();
    await page.waitForFunction(() => document.querySelector('.total')?.textContent === '1');
  });
  await test('a size that no panel has, and a million dents, are refused by the server and stay on the device', async () => {
    await allSent(page);
    const job = jobOf(page);
    const damage = (await call(server, `/api/jobs/${job}`)).damages[0].id;
    await page.getByLabel(/^Across/).fill('90000');
    await page.getByRole('button', { name: 'Count it' }).click();
    await page.getByRole('alert').first().waitFor();
    await page.locator('header .waiting').click();
    await page.getByTestId('refused').waitFor();
    assert.match(await page.getByTestId('refused').textContent(), /length_mm is 90000.*at most 5000/s);
    await sound(page, 'refused');
    await page.getByRole('button', { name: 'Give this up' }).click();
    await allSent(page);
    const dent = { kind: 'hail', length_mm: 12, width_mm: 12, depth_mm: 0.4, metal: 'steel', access: 'open', place: 'flat', count: 1_000_000 };
    const answer = await fetch(`${server.base}/api/damages/${damage}/dents`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(dent) });
    const said = await answer.json();
    assert.equal(answer.status, 422);
    assert.match(said.message, /1000000.*99999/);
    assert.equal(dentsOf(await call(server, `/api/jobs/${job}`)), 1);
  });
  await test('a name of 400 letters and one from right to left are kept whole and fit the page', async () => {
    const long = 'Wolkenbruchhagelschadenversicherungsnehmer'.repeat(10).slice(0, 400);
    const hebrew = 'מרים לדוגמה';
    for (const name of [long, hebrew]) {
      await takeIn(page, { name });
      await allSent(page);
      const job = jobOf(page);
      assert.equal((await call(server, `/api/jobs/${job}`)).customer.name, name);
      await page.getByRole('link', { name: 'Car', exact: true }).click();
      assert.equal(await page.getByLabel('Customer').inputValue(), name);
    }
    const [rtl] = await call(server, '/api/jobs');
    assert.equal(await page.getByLabel('Customer').evaluate((input) => getComputedStyle(input).direction), 'rtl');
    for (const { name, width, height } of [WIDTHS[0], WIDTHS[2]]) {
      await page.setViewportSize({ width, height });
      await page.goto('/#/');
      await page.getByText(hebrew).waitFor();
      await sound(page, `${name}-long-names`);
    }
    for (const row of (await call(server, '/api/jobs')).slice(0, 2)) {
      const paper = await call(server, `/api/jobs/${row.id}/papers`, 'POST', { kind: 'work_order', language: 'de' });
      const bytes = Buffer.from(await (await fetch(`${server.base}/api/papers/${paper.id}/paper.pdf`)).arrayBuffer());
      assert.equal(bytes.subarray(0, 5).toString(), '%PDF-');
    }
    assert.ok(rtl);
  });
  await test('a currency without cents: whole yen on the page, in the quote, on the invoice', async () => {
    const before = await call(server, '/api/shop');
    await call(server, '/api/shop', 'PUT', { ...before, name: 'Line & Light (invented)', address: 'Hafenzeile 4\n10999 Erfundenstadt', currency: 'JPY', hourly_rate: '12345', tax_percent: '10' });
    try {
      await page.reload();
      await takeIn(page, { name: 'Yen (invented)' });
      await markDamage(page, 'bonnet');
      for (let k = 0; k < 3; k++) await page.getByRole('button', { name: 'Count one of 15 mm' }).click();
      await allSent(page);
      const job = jobOf(page);
      const { quote } = await call(server, `/api/jobs/${job}/quote`);
      assert.match(`${quote.net} ${quote.gross} ${quote.lines.map((line) => line.amount).join(' ')}`, /^\d+( \d+)+$/);
      await page.getByRole('link', { name: 'Quote', exact: true }).click();
      await page.getByText('Price with tax').first().waitFor();
      assert.match(await page.locator('tr.gross td.num').textContent(), /^¥[\d,]+$/);
      const bill = await call(server, `/api/jobs/${job}/papers`, 'POST', { kind: 'invoice', language: 'en' });
      assert.match(bill.gross, /^\d+$/);
    } finally {
      await call(server, '/api/shop', 'PUT', before);
    }
  });
}
