// What is wrong must be said plainly, and nothing may be lost or left half-done.
import assert from 'node:assert/strict';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';
import { zip } from './zip.mjs';

const jpeg = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, ...Buffer.from('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xff, 0xd9]);

/** The words of the trouble, which must say what and what to do. */
async function trouble(page, pattern) {
  const shown = page.locator('.trouble');
  await shown.waitFor({ timeout: 60_000 });
  const text = (await shown.textContent()).trim();
  assert.match(text, pattern);
  assert.ok((await shown.locator('p').count()) > 0, `nothing says what to do: ${text}`);
  assert.doesNotMatch(text, /undefined|\[object|panicked|status code/);
}

/** Puts reads before the next one: a single one may be over before it can be cancelled. */
async function queued(server, page, files, count) {
  const damage = page.url().split('/damages/')[1].split(/[/?]/)[0];
  for (let k = 0; k < count; k++) {
    const form = new FormData();
    for (const file of files) form.append('files', new Blob([file.buffer]), file.name);
    const answer = await fetch(`${server.base}/api/damages/${damage}/captures`, { method: 'POST', body: form });
    assert.equal(answer.status, 201, await answer.text());
  }
}

export async function badUploads({ page, server, test, sound }) {
  const files = await captureFiles(server.folder);
  await test('bad upload: holiday photos without a capture.toml', async () => {
    await takeIn(page, { name: 'Bad Upload (invented)' });
    await markDamage(page, 'roof');
    await uploadCapture(page, [{ name: 'holiday.jpg', mimeType: 'image/jpeg', buffer: jpeg }]);
    await trouble(page, /capture\.toml|holiday\.jpg/);
    await sound(page, 'bad-upload');
  });
  await test('bad upload: a zip that reaches out of its folder', async () => {
    const buffer = zip([{ name: '../escape.jpg', data: jpeg }, { name: 'capture.toml', data: Buffer.from('[panel]\n') }]);
    await uploadCapture(page, [{ name: 'capture.zip', mimeType: 'application/zip', buffer }]);
    await trouble(page, /escape\.jpg/);
  });
  await test('bad upload: a truncated photo is named', async () => {
    const broken = files.map((file) => (file.name === 'panel.jpg' ? { ...file, buffer: file.buffer.subarray(0, 2000) } : file));
    await uploadCapture(page, broken);
    await trouble(page, /panel\.jpg/);
  });
  await test('a read under way is cancelled and can be started again', async () => {
    await queued(server, page, files, 4);
    await uploadCapture(page, files);
    await page.getByTestId('progress').waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByLabel('Choose photos').waitFor({ state: 'attached', timeout: 20_000 });
    assert.ok(!page.url().includes('readings'), 'a cancelled read opened a map');
  });
}
