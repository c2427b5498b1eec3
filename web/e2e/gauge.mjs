// A dent whose middle is too steep to read: how far it goes at least, a depth measured by hand joined to the map, taken
// back, and one that disagrees with the map.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;

/** Taps the map at a place of the panel, mm. */
async function tap(page, map, grid, place) {
  // The whole map with its margin (lib/view.ts, fit).
  await map.press('0');
  const box = await map.boundingBox();
  const [wide, high] = [grid.nx * grid.step_mm, grid.ny * grid.step_mm];
  const scale = 0.96 * Math.min(box.width / wide, box.height / high);
  const middle = { x: grid.x0_mm + (wide - grid.step_mm) / 2, y: grid.y0_mm + (high - grid.step_mm) / 2 };
  await map.click({ position: { x: box.width / 2 + (place.x_mm - middle.x) * scale, y: box.height / 2 - (place.y_mm - middle.y) * scale } });
}

export async function gaugeDepth({ page, server, test, sound }) {
  const dent = { depth_mm: 2.0 };
  let reading;
  const id = () => page.url().split('/readings/')[1].split('/')[0];
  const facts = async () => (await fetch(`${server.base}/api/readings/${id()}`)).json();
  const map = page.getByTestId('map');

  await test('gauge: a spot too steep to read says how far it goes at least', async () => {
    await takeIn(page, { name: 'Ines Invented', plate: 'EX 21 G' });
    await markDamage(page, 'rear_door_left');
    await uploadCapture(page, await captureFiles(server.folder, 'demo_door_steep'));
    await map.waitFor({ timeout: READ_MS });
    reading = await facts();
    assert.equal(reading.folds.length, 1);
    assert.equal(reading.folds[0].kind, 'low');
    const bound = -reading.spots[0].at_least_mm;
    assert.ok(bound > 0.3 * dent.depth_mm && bound < dent.depth_mm, `at least ${bound}`);
    await page.getByText('at least', { exact: true }).first().waitFor();
    await page.getByText(/was too steep to read/).first().waitFor();
    for (const width of WIDTHS) {
      await page.setViewportSize(width);
      await sound(page, `${width.name}-gauge-1-at-least`);
    }
  });
  await test('gauge: taken into the quote its depth is a lower bound, and said so', async () => {
    await page.getByRole('button', { name: /^Take \d+ spots? into the quote|^Take the spot/ }).click();
    await page.getByText(/taken over/).waitFor();
    await page.getByRole('link', { name: 'Back to the damage' }).click();
    await page.getByText(/may be deeper than priced/).waitFor();
    await sound(page, 'gauge-2-dents');
    await page.goBack();
    await page.getByRole('link', { name: /quote/i }).first().click();
    await page.getByText(/too steep to read in part/).waitFor();
    await sound(page, 'gauge-2-quote');
    await page.goBack();
    await map.waitFor();
  });
  await test('gauge: a depth entered on the map fills in the middle', async () => {
    await page.getByTestId('gauge').getByRole('button', { name: 'Add a gauge depth' }).click();
    await page.getByText(/Tap the map where/).waitFor();
    await map.scrollIntoViewIfNeeded();
    await tap(page, map, reading.grid, reading.folds[0]);
    await page.getByText(/^At /).waitFor();
    await page.getByTestId('gauge').getByLabel(/Depth or height/).fill('2.0');
    for (const width of WIDTHS) {
      await page.setViewportSize(width);
      await page.getByTestId('gauge').scrollIntoViewIfNeeded();
      await sound(page, `${width.name}-gauge-3-entering`);
    }
    const before = id();
    await page.getByRole('button', { name: 'Join it to the map' }).click();
    await page.waitForFunction((before) => !location.hash.includes(before), before);
    await page.getByText(/filled in as the smoothest shape/).first().waitFor();
    const joined = await facts();
    assert.equal(joined.folds.length, 0);
    assert.equal(joined.gauges.length, 1);
    assert.ok(Math.hypot(joined.gauges[0].x_mm - reading.folds[0].x_mm, joined.gauges[0].y_mm - reading.folds[0].y_mm) < 6, 'the place that was tapped');
    assert.ok(Math.abs(joined.spots[0].height_mm) > 1.8 && joined.spots[0].at_least_mm === undefined, JSON.stringify(joined.spots[0]));
    for (const width of WIDTHS) {
      await page.setViewportSize(width);
      await sound(page, `${width.name}-gauge-4-joined`);
    }
  });
  await test('gauge: a depth where the map was read checks it', async () => {
    await page.getByTestId('gauge').getByRole('button', { name: 'Add a gauge depth' }).click();
    await map.scrollIntoViewIfNeeded();
    await tap(page, map, reading.grid, { x_mm: 30, y_mm: -30 });
    await page.getByTestId('gauge').getByLabel(/Depth or height/).fill('0.8');
    const before = id();
    await page.getByRole('button', { name: 'Join it to the map' }).click();
    await page.waitForFunction((before) => !location.hash.includes(before), before);
    await page.getByText(/they disagree/).first().waitFor();
    assert.equal((await facts()).gauges.length, 2);
    await sound(page, 'gauge-5-disagrees');
  });
  await test('gauge: depths are taken back one by one, and the reading stands as it was', async () => {
    for (const left of [1, 0]) {
      const before = id();
      await page.getByTestId('gauge').getByRole('button', { name: 'Take it back' }).click();
      await page.waitForFunction((before) => !location.hash.includes(before), before);
      await map.waitFor();
      assert.equal((await facts()).gauges.length, left);
    }
    assert.equal(id(), reading.id);
    await page.getByRole('link', { name: 'Back to the damage' }).click();
    await page.getByRole('link', { name: /Open the map|map of/i }).first().waitFor();
  });
}
