// A learner on a simulated panel: read, find the hidden tip, push, tap, end, replay, the sheet of the weeks.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';

const SETTLED_MS = 60_000;
const ANSWER_MS = 100;

export async function rehearse({ page, server, test, sound }) {
  const picture = page.getByTestId('mirror');
  const touch = async (x, y) => {
    const box = await picture.boundingBox();
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
  };
  await test('rehearse: a name is needed, a level is chosen', async () => {
    await page.goto('/#/settings');
    await page.getByRole('link', { name: 'Rehearse' }).click();
    await page.getByTestId('level-first_ding').click();
    await page.getByText('A name, so that the sheet is yours').waitFor();
    await page.getByLabel('Who learns').fill('Ada Invented');
    await sound(page, 'rehearse-1-levels');
    await page.getByTestId('level-first_ding').click();
    await page.getByTestId('read-lines').waitFor({ timeout: SETTLED_MS });
  });
  await test('rehearse: lows and highs are read off the lines', async () => {
    const { x, y } = await lowest(page);
    await touch(x, y);
    await sound(page, 'rehearse-2-read');
    await page.getByRole('button', { name: 'That is what I read' }).click();
    await page.getByTestId('claims').waitFor();
    assert.match(await page.getByTestId('claims').textContent(), /Right: Low/);
    await page.getByText('Width alone tells neither low nor high').waitFor();
    await sound(page, 'rehearse-3-told');
    await page.getByRole('button', { name: 'Begin to work' }).click();
  });
  await test('rehearse: the tip behind the panel shows in the lines while it leans', async () => {
    const before = await picture.screenshot();
    const leant = page.waitForResponse((one) => one.url().endsWith('/lean'));
    const pad = await page.getByTestId('tip-pad').boundingBox();
    await page.mouse.move(pad.x + pad.width / 2, pad.y + pad.height / 2);
    await page.mouse.down();
    await leant;
    await page.mouse.move(pad.x + pad.width / 2 + 20, pad.y + pad.height / 2);
    await page.waitForTimeout(400);
    await sound(page, 'rehearse-4-lean');
    const after = await picture.screenshot();
    await page.mouse.up();
    assert.ok(!after.equals(before), 'the lines bulge over the tip');
  });
  await test('rehearse: a push is answered at once, then settles', async () => {
    const about = page.waitForResponse((one) => one.url().endsWith('/foretell'));
    await page.getByRole('button', { name: 'Push', exact: true }).click();
    const timing = (await about).request().timing();
    console.log(`  foretold after ${(timing.responseStart - timing.requestStart).toFixed(0)} ms (wanted: ${ANSWER_MS})`);
    await page.getByTestId('moves-made').filter({ hasText: '1 move.' }).waitFor({ timeout: SETTLED_MS });
  });
  await test('rehearse: a tap from the front where the picture is touched', async () => {
    await page.getByRole('radio', { name: 'Tap down' }).check();
    await touch(0.6, 0.45);
    await page.getByTestId('tip-mark').waitFor();
    await page.getByRole('button', { name: 'Tap', exact: true }).click();
    await page.getByTestId('moves-made').filter({ hasText: '2 moves.' }).waitFor({ timeout: SETTLED_MS });
  });
  await test('rehearse: the page loaded anew stands where it stood', async () => {
    await page.reload();
    await page.getByTestId('moves-made').filter({ hasText: '2 moves.' }).waitFor({ timeout: SETTLED_MS });
  });
  await test('rehearse: ended with a score, replayed', async () => {
    await page.getByRole('button', { name: 'I am done' }).click();
    const score = page.getByTestId('score');
    await score.waitFor();
    assert.match(await score.textContent(), /Read right.*100\s%.*Moves.*2/s);
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByTestId('replay').getByText('2 / 2').waitFor();
    await sound(page, 'rehearse-5-score');
    await page.getByRole('link', { name: 'Another panel' }).click();
    await page.getByTestId('learners-sheet').getByRole('link', { name: 'A first ding' }).waitFor();
    await sound(page, 'rehearse-6-sheet');
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`rehearse: at ${name}`, async () => {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-rehearse-levels`);
      await page.getByTestId('level-lows_at_a_line').click();
      await page.getByTestId('read-lines').waitFor({ timeout: SETTLED_MS });
      await page.getByRole('button', { name: 'Begin to work' }).click();
      await page.getByTestId('work-tip').waitFor();
      await page.waitForTimeout(300);
      await sound(page, `${name}-rehearse-work`);
      await page.goto('/#/rehearse');
    });
  }
}

/** Where the picture shows the deepest place, by what the server says of the panel. */
async function lowest(page) {
  return page.evaluate(async () => {
    const id = location.hash.split('/').pop();
    const panel = await (await fetch(`/api/rehearsals/${id}`)).json();
    const values = panel.deviation_mm;
    const i = values.indexOf(Math.min(...values));
    const { nx, x0_mm, y0_mm, step_mm } = panel.grid;
    const place = [x0_mm + step_mm * (i % nx), y0_mm + step_mm * Math.floor(i / nx), 0];
    const eye = [0, -260, 430];
    const far = Math.hypot(...eye);
    const ahead = eye.map((v) => -v / far);
    const down = [0, ahead[2], -ahead[1]];
    const to = place.map((v, k) => v - eye[k]);
    const dot = (a) => a[0] * to[0] + a[1] * to[1] + a[2] * to[2];
    return { x: 0.5 + (5 * to[0]) / dot(ahead), y: 0.5 + (5 * dot(down)) / (0.86 * dot(ahead)) };
  });
}
