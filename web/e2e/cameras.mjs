// A phone's lens from photos of the camera sheet, as rendered by the program itself.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WIDTHS } from './browser.mjs';
import { BINARY } from './server.mjs';

export async function phoneLens({ page, server, test, sound }) {
  const folder = join(server.folder, 'camera');
  execFileSync(BINARY, ['demo-captures', '--camera', folder]);
  const names = (await readdir(folder)).sort();
  const files = await Promise.all(names.map(async (name) => ({ name, mimeType: 'image/jpeg', buffer: await readFile(join(folder, name)) })));
  await test('a phone is calibrated by nine photos and its age is shown', async () => {
    await page.goto('/#/settings/cameras');
    await page.getByText('No phone was calibrated yet').waitFor();
    await page.getByLabel('Choose the photos').setInputFiles(files);
    await page.getByRole('heading', { name: 'Example Phone, 26 mm' }).waitFor({ timeout: 60_000 });
    const text = await page.getByTestId('cameras').textContent();
    assert.match(text, /calibrated today, 9 photos, 1280 × 960/);
    const [, focal, doubt] = /Focal length ([\d,.]+) ± ([\d.]+)\spx/.exec(text);
    // 640 px over the tangent of 31 degrees
    assert.ok(Math.abs(Number(focal.replace(',', '')) - 1065.1) < 2 * Number(doubt), `${focal} ± ${doubt}`);
    for (const { name, width, height } of WIDTHS) {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-cameras`);
    }
  });
  await test('photos of something else calibrate nothing', async () => {
    await page.getByLabel('Choose the photos').setInputFiles(files.slice(0, 2));
    await page.locator('.trouble').waitFor({ timeout: 60_000 });
    assert.match(await page.locator('.trouble').textContent(), /only 2 of 2 photos.*six to twelve photos/s);
    await page.getByRole('button', { name: 'Forget the calibration of Example Phone' }).click();
    await page.getByText('No phone was calibrated yet').waitFor();
  });
}
