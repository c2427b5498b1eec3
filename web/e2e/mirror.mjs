// Look again: the mirror on the graphics card shows the lines that the photos show. Every pixel's board place, as the
// shader has it, is held against the phase of the captured pattern photos there.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { BINARY } from './server.mjs';

const PHOTO = { width: 1280, height: 960 };
const LIT = { u: 708, v: 398 };

/** Differences of phase between shader and photos, radians, on a lattice of pixels; runs in the page. */
function compare({ axis, periods, length, photo, every }) {
  const canvas = document.querySelector('[data-testid=mirror]');
  const points = canvas.boardPoints(photo.width, photo.height);
  const at = (x, y) => 4 * ((photo.height - 1 - y) * photo.width + x);
  const light = window.patterns.map((data) => (x, y) => (data[4 * (y * photo.width + x) + 1] / 255) ** 2.2);
  const off = [];
  let seen = 0;
  for (let y = 8; y < photo.height - 8; y += every) {
    for (let x = 8; x < photo.width - 8; x += every) {
      const [a, b, c, d] = light.map((of) => of(x, y));
      const [cos, sin] = [a - c, d - b];
      if (Math.hypot(cos, sin) < 0.02) continue;
      seen++;
      const k = at(x, y);
      if (points[k + 2] < 0.5) continue;
      const place = points[k + (axis === 'u' ? 0 : 1)];
      const expected = 2 * Math.PI * periods * (place / length + 0.5);
      const difference = Math.atan2(sin, cos) - expected;
      off.push(Math.abs(Math.atan2(Math.sin(difference), Math.cos(difference))));
    }
  }
  off.sort((p, q) => p - q);
  return { seen, shown: off.length, median: off[off.length >> 1], p95: off[Math.floor(off.length * 0.95)] };
}

/** Loads the four photos of a pattern into the page. */
async function load(page, wave) {
  await page.evaluate(
    async ({ wave, photo }) => {
      window.patterns = [];
      for (const k of [0, 1, 2, 3]) {
        const image = await createImageBitmap(await (await fetch(`/captured/screen_${wave}_${k}.jpg`)).blob());
        const context = new OffscreenCanvas(photo.width, photo.height).getContext('2d');
        context.drawImage(image, 0, 0);
        window.patterns.push(context.getImageData(0, 0, photo.width, photo.height).data);
      }
    },
    { wave, photo: PHOTO },
  );
}

export async function mirrorPage({ page, server, test, sound }) {
  const captures = join(server.folder, 'captures');
  if (!existsSync(captures)) execFileSync(BINARY, ['demo-captures', captures]);
  const folder = (name) => join(captures, name);
  const files = async (name) => {
    const { readdir } = await import('node:fs/promises');
    const names = (await readdir(folder(name))).filter((file) => /\.(jpg|toml)$/.test(file));
    return Promise.all(names.map(async (file) => ({ name: file, mimeType: file.endsWith('toml') ? 'application/toml' : 'image/jpeg', buffer: await readFile(join(folder(name), file)) })));
  };
  await page.route('**/captured/*', async (route) => route.fulfill({ body: await readFile(join(folder('demo_door_before'), route.request().url().split('/').pop())), contentType: 'image/jpeg' }));
  await test('look again: the shader mirrors the lines where the photos show them', async () => {
    await takeIn(page, { name: 'Mirror (invented)' });
    await markDamage(page);
    await uploadCapture(page, await files('demo_door_before'));
    await page.getByTestId('map').waitFor({ timeout: 120_000 });
    await page.getByRole('link', { name: 'Look again' }).click();
    await page.waitForFunction(() => Number(document.querySelector('[data-testid=mirror]')?.dataset.frames) > 0);
    for (const [axis, periods] of [['u', 36], ['v', 20]]) {
      await load(page, `${axis}${periods}`);
      const found = await page.evaluate(compare, { axis, periods, length: LIT[axis], photo: PHOTO, every: 5 });
      const mm = (found.median / (2 * Math.PI)) * (LIT[axis] / periods);
      console.log(`        ${axis}: ${found.shown} of ${found.seen} pixels, phase off by ${found.median.toFixed(4)} rad in the median (${mm.toFixed(2)} mm on the board), 95 % within ${found.p95.toFixed(3)}`);
      assert.ok(found.shown > 0.75 * found.seen, `${found.shown} of ${found.seen} pixels are drawn`);
      // A period is 2π: within a fiftieth of a line's pitch in the middle, a sixteenth nearly everywhere. Sensor noise
      // alone is about 0.01 rad here, so less would mean that photos were compared with themselves.
      assert.ok(found.median > 0.01 && found.median < 0.125, `median ${found.median} rad`);
      assert.ok(found.p95 > 0.03 && found.p95 < 0.39, `95 % within ${found.p95} rad`);
    }
    // A board a millimetre to the side must be noticed: the comparison can fail.
    await page.evaluate(() => document.querySelector('[role=application]').focus());
    await page.getByRole('radio', { name: 'the board' }).check();
    await page.getByRole('application').press('ArrowRight');
    await load(page, 'u36');
    const moved = await page.evaluate(compare, { axis: 'u', periods: 36, length: LIT.u, photo: PHOTO, every: 9 });
    assert.ok(moved.median > 0.5, `a moved board is off by ${moved.median} rad only`);
    await page.getByRole('button', { name: 'As photographed' }).click();
    await sound(page, 'mirror-1');
  });
  await test('look again: lines, board and eye move, the deviation grows', async () => {
    const view = page.getByTestId('mirror');
    const picture = () => view.screenshot();
    let before = await picture();
    const changes = async (what, act) => {
      await act();
      await page.waitForTimeout(200);
      const now = await picture();
      assert.ok(!now.equals(before), `${what} changes nothing`);
      before = now;
    };
    await page.getByRole('application').scrollIntoViewIfNeeded();
    const box = await view.boundingBox();
    const drag = async () => {
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2 + 40, box.y + box.height / 2 + 12, { steps: 6 });
      await page.mouse.up();
    };
    for (const what of ['the lines', 'the board', 'the eye']) {
      await page.getByRole('radio', { name: what }).check();
      await changes(what, drag);
    }
    await changes('the exaggeration', () => page.getByLabel('Deviation exaggerated').fill('8'));
    await changes('the pitch', () => page.getByLabel('Pitch').fill('30'));
    await changes('the turn', () => page.getByLabel('Lines turned').fill('90'));
    const rate = await page.evaluate(async () => {
      const canvas = document.querySelector('[data-testid=mirror]');
      const slider = [...document.querySelectorAll('input[type=range]')].at(-1);
      const [from, first] = [performance.now(), Number(canvas.dataset.frames)];
      for (let k = 0; k < 3 || performance.now() - from < 2000; k++) {
        slider.value = String(k % 20);
        slider.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise(requestAnimationFrame);
      }
      return { fps: (1000 * (Number(canvas.dataset.frames) - first)) / (performance.now() - from), pixels: canvas.width * canvas.height };
    });
    console.log(`        ${rate.fps.toFixed(0)} frames a second of ${rate.pixels} pixels, drawn by this machine's processor without a graphics card`);
    assert.ok(rate.fps > 0);
  });
  await test('look again: before and after on one another', async () => {
    await page.getByRole('link', { name: 'Back to the map' }).click();
    await page.getByRole('link', { name: 'Back to the damage' }).click();
    await uploadCapture(page, await files('demo_door_after'));
    await page.getByTestId('map').waitFor({ timeout: 120_000 });
    await page.getByRole('link', { name: 'Look again' }).click();
    const view = page.getByTestId('mirror');
    await page.waitForFunction(() => Number(document.querySelector('[data-testid=mirror]')?.dataset.frames) > 0);
    await page.getByRole('button', { name: /Beside the reading of/ }).click();
    await page.getByText('Which reading').waitFor();
    await page.waitForTimeout(300);
    const other = await view.screenshot();
    await page.getByRole('group', { name: 'Which reading' }).getByRole('radio').first().check();
    await page.waitForTimeout(300);
    assert.ok(!(await view.screenshot()).equals(other), 'both readings look the same');
    for (const { name, width, height } of WIDTHS) {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-mirror`);
    }
  });
}
