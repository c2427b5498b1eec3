// Sheets to print: the page at every width, and the PDF that it makes.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { WIDTHS } from './browser.mjs';

export async function sheets({ page, test, sound }) {
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: tags and boards are printed from the settings`, async () => {
      await page.setViewportSize({ width, height });
      await page.goto('/#/settings');
      await page.getByRole('link', { name: 'Print tags and boards' }).click();
      await page.getByRole('heading', { name: 'Print tags and boards' }).waitFor();
      await page.getByRole('radio', { name: 'Line board' }).check();
      await page.getByLabel('Sheets side by side').fill('2');
      await sound(page, `${name}-sheets`);
      const [download] = await Promise.all([page.waitForEvent('download', { timeout: 60_000 }), page.getByRole('button', { name: 'Make the PDF' }).click()]);
      const bytes = await readFile(await download.path());
      assert.equal(bytes.subarray(0, 5).toString(), '%PDF-');
      assert.ok(bytes.length > 8_000, `${bytes.length} bytes`);
    });
  }
  await test('a tag that does not fit the paper is refused with its bounds', async () => {
    await page.getByRole('radio', { name: 'Tags for the panel' }).check();
    await page.getByLabel('Side of a tag’s black square').fill('300');
    await page.getByRole('button', { name: 'Make the PDF' }).click();
    await page.locator('.trouble').waitFor();
    assert.match(await page.locator('.trouble').textContent(), /from 8 to 100/);
  });
}
