// From a reading to its plan, the moves worked hands-free at the panel, readings in between, until it is level.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;
const PLAN_MS = 300_000;
const SENT_MS = 20_000;

export async function plan({ page, server, test, sound }) {
  let where = '';
  const big = page.getByTestId('big-move');
  const said = page.getByTestId('work-said');
  const moves = async () => (await (await fetch(`${server.base}/api/damages/${where.split('/')[4]}/work`)).json()).moves;
  /** The moves in the record, once there are so many. */
  const record = async (count) => {
    for (const until = Date.now() + SENT_MS; ; await page.waitForTimeout(200)) {
      const made = await moves();
      if (made.length === count) return made;
      assert.ok(Date.now() < until, `${made.length} moves are in the record, not ${count}`);
    }
  };

  await page.addInitScript(speechStandIn);
  await test('plan: few things are asked, what is wrong is said', async () => {
    await takeIn(page, { name: 'Plan Invented', plate: 'EX 6 PL' });
    await markDamage(page);
    await uploadCapture(page, await captureFiles(server.folder, 'demo_door_before'));
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
    await page.getByRole('link', { name: 'Plan the repair' }).click();
    await page.getByLabel('Warmest allowed').fill('95');
    await page.getByText('A panel has −20 to 70 °C').waitFor();
    await page.getByLabel('Warmest allowed').fill('50');
    await page.getByLabel('Panel now').fill('5');
    await page.getByRole('radio', { name: 'Hot glue' }).check();
    await sound(page, 'plan-1-ask');
    where = new URL(page.url()).hash.slice(1).replace(/\/plan$/, '');
  });
  await test('plan: stopped, then made', async () => {
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByTestId('plan-progress').waitFor();
    await sound(page, 'plan-2-progress');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Make the plan' }).waitFor();
    assert.equal(await page.getByLabel('Panel now').inputValue(), '5', 'what was answered stays');
    await page.getByRole('button', { name: 'Make the plan' }).click();
    await page.getByTestId('plan-verdict').waitFor({ timeout: PLAN_MS });
    assert.match(await page.getByTestId('plan-verdict').textContent(), /can be done|rules it out|texture or paint|cannot be done/);
    const { plan: told } = await (await fetch(`${server.base}/api/readings/${where.split('/')[6]}/plan`)).json();
    const short = told.rounds.length > 0 && told.rounds.at(-1).expected_mm > told.limit_mm;
    assert.equal(/can be done, as far as computed/.test(await page.getByTestId('plan-verdict').textContent()), told.verdict.can === 'yes' && told.rounds.length > 0 && !short, 'a yes only where the limit is reached');
    const cards = page.getByTestId('round-now').getByTestId('move-card');
    assert.ok((await cards.count()) >= 1);
    assert.match(await cards.first().textContent(), /(Push|Pull|Tap|Blend) .*mm.*Why.*With.*Lines.*Heat.*Stop/s);
    await page.getByText('Nothing is promised about the paint').waitFor();
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`plan: the page at ${name}`, async () => {
      await page.setViewportSize({ width, height });
      await page.getByRole('radio', { name: 'On the photo' }).check();
      await sound(page, `${name}-plan-3-photo`);
      await page.getByRole('radio', { name: 'On the map' }).check();
      await sound(page, `${name}-plan-4-map`);
    });
  }
  await test('work: one move at a time, large; a cold panel is warmed, and how long it stays so is counted down', async () => {
    const heat = page.getByTestId('heat');
    await page.setViewportSize({ width: 390, height: 844 });
    await page.getByRole('link', { name: 'To work' }).click();
    await big.waitFor();
    assert.match(await big.textContent(), /look for airbags/, 'nothing was drawn behind');
    await sound(page, '390-work-1-move');
    await large(page);
    await heat.getByLabel('Warmed to').fill('45');
    await heat.getByRole('button', { name: 'Count down' }).click();
    await heat.locator('.count').waitFor();
    assert.match(await heat.textContent(), /\d:\d\d.*until it falls below/);
    await sound(page, '390-work-1-heat');
    await heat.getByRole('button', { name: 'Stop the countdown' }).click();
  });
  await test('work: two photos in which nothing moved tell no tip, and say so', async () => {
    const shot = (await captureFiles(server.folder)).find((one) => one.name.endsWith('.jpg'));
    const pane = page.getByTestId('find-tip');
    await pane.getByText('Where is my tip?').click();
    const file = (name) => ({ ...shot, name });
    await pane.locator('input[type=file]').first().setInputFiles([file('a.jpg')]);
    await pane.locator('input[type=file]').last().setInputFiles([file('b.jpg')]);
    await pane.getByRole('alert').waitFor({ timeout: 60_000 });
    await sound(page, '390-work-1-tip');
    await pane.getByText('Where is my tip?').click();
  });
  await test('work: two knocks say it is done, tapping does not', async () => {
    await page.getByRole('button', { name: 'Knocks' }).evaluate((knocks) => knocks.click());
    await shake(page, { blows: [], seconds: 1, hard: 0 });
    await page.getByText('Two knocks on the phone').waitFor();
    await shake(page, { blows: Array.from({ length: 8 }, (_, k) => 1 + 0.3 * k), seconds: 4.6, hard: 6 });
    assert.equal(await said.textContent(), '', 'tapping is no knock');
    await shake(page, { blows: [1, 1.35], seconds: 2.8, hard: 16 });
    await page.waitForFunction(() => /^Noted/.test(document.querySelector('[data-testid=work-said]').textContent));
    assert.equal((await record(1))[0].planned, true);
  });
  await test('work: undo takes it back, also in the record', async () => {
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.waitForFunction(() => /^Taken back/.test(document.querySelector('[data-testid=work-said]').textContent));
    await record(0);
    await shake(page, { blows: [1, 1.4], seconds: 2.8, hard: 16 });
    await page.waitForFunction(() => /^Noted/.test(document.querySelector('[data-testid=work-said]').textContent));
  });
  await test('work: a spoken word, and the next move read aloud', async () => {
    await page.getByRole('button', { name: 'Read aloud' }).click();
    await page.getByRole('button', { name: 'Voice' }).click();
    await page.getByText('Some browsers send the sound to their maker').waitFor();
    await page.evaluate(() => window.hearing.say('nothing of ours'));
    const before = (await page.evaluate(() => window.spoken)).length;
    assert.ok(before > 0, 'it was read aloud');
    await page.evaluate(() => window.hearing.say('back'));
    await page.waitForFunction(() => /^Taken back/.test(document.querySelector('[data-testid=work-said]').textContent));
    await page.evaluate(() => window.hearing.say('done'));
    await page.waitForFunction(() => /^Noted/.test(document.querySelector('[data-testid=work-said]').textContent));
    assert.match((await page.evaluate(() => window.spoken)).at(-1), /^(Move \d|The round is over)/);
    await record(1);
  });
  await test('work: the rest of the round by hand; an own move; without network nothing is lost', async () => {
    await page.context().setOffline(true);
    while ((await big.count()) > 0) await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.getByTestId('round-over').waitFor();
    await page.getByRole('button', { name: 'Own move' }).click();
    await page.getByRole('radio', { name: 'Tap' }).check();
    const panel = await page.getByTestId('marked-panel').boundingBox();
    await page.mouse.click(panel.x + 0.55 * panel.width, panel.y + 0.4 * panel.height);
    await page.getByText(/^at x /).waitFor();
    await sound(page, '390-work-2-own');
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.context().setOffline(false);
    const planned = (await (await fetch(`${server.base}/api/readings/${where.split('/')[6]}/plan`)).json()).plan.rounds[0].moves;
    const made = await record(planned.length);
    assert.deepEqual(made.map((one) => [one.act, one.planned]), planned.map((one) => [one.act, true]));
    await page.reload();
    await page.getByTestId('made-count').filter({ hasText: planned.length === 1 ? 'One move' : `${planned.length} moves` }).waitFor();
    await sound(page, '390-work-3-over');
  });
  for (const { name, width, height } of WIDTHS.slice(1)) {
    await test(`work: the page at ${name}`, async () => {
      await page.setViewportSize({ width, height });
      await page.getByRole('button', { name: 'Undo' }).click();
      await big.waitFor();
      await sound(page, `${name}-work-4-move`);
      await page.getByRole('button', { name: 'Done', exact: true }).click();
      await page.getByTestId('round-over').waitFor();
    });
  }
  await test('plan on: read again, what came of it, the next round by one tap', async () => {
    await page.getByRole('link', { name: 'Read again' }).click();
    await uploadCapture(page, await captureFiles(server.folder, 'demo_door_round_1'));
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
    await page.getByRole('link', { name: 'Plan on' }).click();
    await page.getByRole('button', { name: 'Plan on' }).click();
    await page.getByTestId('plan-verdict').waitFor({ timeout: PLAN_MS });
    await page.getByTestId('came-of').waitFor();
    assert.match(await page.getByTestId('came-of').textContent(), /foretold .* found/s);
    await sound(page, 'plan-5-came-of');
  });
  await test('done: level within the limit, and looked at again the next day', async () => {
    await page.goto(`/#/${where.split('/').slice(1, 5).join('/')}/photos`);
    await uploadCapture(page, await captureFiles(server.folder, 'demo_door_after'));
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
    await page.getByRole('link', { name: 'Plan on' }).click();
    await page.getByRole('button', { name: 'Plan on' }).click();
    await page.getByTestId('plan-verdict').filter({ hasText: 'Level within your limit' }).waitFor({ timeout: PLAN_MS });
    await page.getByRole('button', { name: 'Look again tomorrow' }).click();
    await page.getByText('You are reminded on').waitFor();
    await sound(page, 'plan-6-level');
    // The next day.
    const damage = where.split('/')[4];
    const today = new Date(Date.now() - new Date().getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
    const put = await fetch(`${server.base}/api/damages/${damage}/look-again`, { method: 'PUT', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ due: today }) });
    assert.equal(put.status, 204);
    await page.goto(`/#/jobs/${where.split('/')[2]}`);
    await page.getByText('Read again today').click();
    await page.getByTestId('look-again').getByRole('button', { name: 'Not needed' }).click();
    await page.getByTestId('look-again').waitFor({ state: 'detached' });
  });
}

/** What must be large at the panel: everything that is pressed there, and the one button most. */
async function large(page) {
  const small = await page.locator('.page button, .page a').evaluateAll((all) => all.map((one) => [one.textContent.trim(), one.getBoundingClientRect()]).filter(([, box]) => box.height < 55.5 || box.width < 55.5).map(([text, box]) => `${text} ${box.width}×${box.height}`));
  assert.deepEqual(small, []);
  const done = await page.getByRole('button', { name: 'Done', exact: true }).boundingBox();
  assert.ok(done.height >= 112 && done.width > 340, `${done.width} × ${done.height}`);
}

/** A phone's accelerometer at 60 Hz, leaning, with blows at these seconds; its time goes on by itself. */
function shake(page, trace) {
  return page.evaluate(({ blows, seconds, hard }) => {
    const begin = (window.shaken ?? performance.now()) + 1000;
    window.shaken = begin + 1000 * seconds;
    for (let k = 0; k < 60 * seconds; k++) {
      const t = k / 60;
      const ring = blows.reduce((sum, at) => (t < at ? sum : sum + hard * Math.exp(-(t - at) / 0.012)), 0);
      const motion = new DeviceMotionEvent('devicemotion', { accelerationIncludingGravity: { x: 1 + 0.02 * Math.sin(3.1 * k), y: 6.9, z: 6.9 + ring }, interval: 16 });
      Object.defineProperty(motion, 'timeStamp', { value: begin + 1000 * t });
      dispatchEvent(motion);
    }
  }, trace);
}

/** Stands in for the browser's speech, which has no microphone here: `hearing.say` is heard, `spoken` is what was read. */
function speechStandIn() {
  window.spoken = [];
  class Ear extends EventTarget {
    start() {
      window.hearing = this;
    }
    abort() {}
    say(transcript) {
      this.onresult?.({ resultIndex: 0, results: [Object.assign([{ transcript }], { isFinal: true })] });
    }
  }
  window.SpeechRecognition = window.webkitSpeechRecognition = Ear;
  speechSynthesis.speak = (one) => window.spoken.push(one.text);
}
