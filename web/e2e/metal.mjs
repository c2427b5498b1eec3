// What the metal of a reading holds: asked, worked out, shown in layers; a move tried by touch.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;
const KNOWN_MS = 600_000;

export async function metal({ page, server, test, sound }) {
  const words = page.getByTestId('metal-words');
  await test('metal: asked for a spot of a reading', async () => {
    await takeIn(page, { name: 'Metal Invented', plate: 'EX 7 ME' });
    await markDamage(page);
    await uploadCapture(page, await captureFiles(server.folder));
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
    await page.getByRole('link', { name: 'What the metal holds' }).click();
    await page.getByLabel('Thickness of the sheet').fill('7');
    await page.getByText('0.3 to 3 mm', { exact: true }).waitFor();
    await page.getByLabel('Thickness of the sheet').fill('0.7');
    await sound(page, 'metal-1-ask');
  });
  await test('metal: stopped, then worked out', async () => {
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByTestId('metal-progress').waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByTestId('metal-progress').waitFor();
    await sound(page, 'metal-2-progress');
    await words.waitFor({ timeout: KNOWN_MS });
    assert.match(await words.textContent(), /About [\d.]+\s% stretched at most, doubt [\d.]+\s%/);
    assert.match(await words.textContent(), /Brought level/);
  });
  await test('metal: a move is tried where the map is touched', async () => {
    const pane = page.getByTestId('try-move');
    await pane.getByText('Lift that stays').waitFor();
    const before = await pane.locator('dl').textContent();
    await pane.getByRole('button', { name: 'More' }).first().click();
    await page.waitForFunction((old) => document.querySelector('[data-testid=try-move] dl')?.textContent !== old, before);
    await pane.getByRole('radio', { name: 'Pull by a tab' }).check();
    await pane.getByText('Glue', { exact: true }).waitFor();
    await pane.getByRole('radio', { name: 'Push from behind' }).check();
    await pane.getByText('Paint, temperature, bar').click();
    await pane.getByRole('checkbox', { name: 'Through a round steel bar' }).check();
    await pane.getByText('Force of the hand').waitFor();
  });
  await test('metal: how long a spot is warmed, and the lowest limit wins', async () => {
    const pane = page.getByTestId('warm-it');
    await pane.getByText('Warm enough after').waitFor();
    await pane.getByText('the paint itself').waitFor();
    await pane.getByLabel(/High-voltage battery/).check();
    await pane.locator('dl').getByText('High-voltage battery').waitFor();
    for (let k = 0; k < 20; k++) await pane.getByRole('button', { name: 'Warm it to: More' }).click();
    await pane.getByText('The lowest limit wins.', { exact: false }).waitFor();
    await sound(page, 'metal-4-warm');
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`metal: the page at ${name}`, async () => {
      await page.setViewportSize({ width, height });
      await page.getByRole('radio', { name: 'Tension', exact: true }).check();
      await sound(page, `${name}-metal-3-known`);
    });
  }
}
