// Before and after, the series, the verdict spot by spot, a body line, a reading taken along and opened again.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;

export async function beforeAndAfter({ page, server, width, test, sound }) {
  const at = (step) => `${width.name}: ${step}`;
  const shot = (name) => sound(page, `${width.name}-${name}`);
  let packed;

  await test(at('two readings of one damage'), async () => {
    await takeIn(page, { name: 'Ina Invented', plate: 'EX 17 C' });
    await markDamage(page);
    for (const name of ['demo_door_before', 'demo_door_round_1']) {
      await uploadCapture(page, await captureFiles(server.folder, name));
      await page.getByTestId('map').waitFor({ timeout: READ_MS });
      await page.getByRole('link', { name: 'Back to the damage' }).click();
      await page.getByRole('heading', { name: /Front door/ }).waitFor();
    }
  });
  await test(at('what changed is told with its doubt'), async () => {
    await page.getByRole('link', { name: 'Before and after' }).click();
    await page.getByTestId('map').waitFor();
    const moved = await page.getByTestId('moved').textContent();
    assert.match(moved, /Up[\d.]+ ± [\d.]+\smm³/);
    await page.getByText(/Laid on each other by \d tags that stayed/).waitFor();
    await page.getByRole('button', { name: /better/ }).first().click();
    await page.waitForFunction(() => /came up/.test(document.querySelector('[data-testid=readout]')?.textContent ?? ''));
    await page.getByTestId('residual').locator('circle').nth(1).waitFor();
    assert.equal(await page.getByTestId('series').locator('canvas').count(), 2);
    await shot('11-change');
    await page.getByRole('radio', { name: 'Before' }).check();
    await shot('12-before');
  });
  await test(at('the verdict says how sure it is, spot by spot, and texture is told apart'), async () => {
    await page.getByTestId('series').locator('a').nth(1).click();
    await page.getByTestId('map').waitFor();
    await page.getByText(/Your limit: 10.* and 1.0\smrad/).waitFor();
    await page.getByRole('heading', { name: 'Texture' }).waitFor();
    await page.getByText('By scale').click();
    await page.getByText('3–10 mm').waitFor();
    await shot('13-texture');
  });
  await test(at('where no body line runs, it says so'), async () => {
    await page.getByRole('button', { name: 'Cut', exact: true }).click();
    const map = page.getByTestId('map');
    await map.scrollIntoViewIfNeeded();
    const box = await map.boundingBox();
    await page.mouse.move(box.x + 0.2 * box.width, box.y + 0.62 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.8 * box.width, box.y + 0.62 * box.height, { steps: 5 });
    await page.mouse.up();
    await page.getByRole('button', { name: /body line runs/ }).click();
    await page.getByText(/no body line runs there/i).or(page.getByTestId('line-run')).first().waitFor();
  });
  await test(at('a reading is taken along and opened again'), async () => {
    await page.getByText('Take it along').click();
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: /^ZIP/ }).click()]);
    packed = { name: 'reading.zip', mimeType: 'application/zip', buffer: await readFile(await download.path()) };
    assert.ok(packed.buffer.length > 100_000, `${packed.buffer.length} bytes`);
    await shot('14-take-along');
    await page.getByRole('link', { name: 'Back to the damage' }).click();
    await page.getByRole('radio', { name: 'Read from photos' }).check();
    await page.getByLabel('Open a packed reading').setInputFiles([packed]);
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
  });
}
