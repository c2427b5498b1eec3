// A live session: one browser page is the board, one the camera. The camera's picture is a canvas stream that shows
// the rendered photo belonging to what the board's canvas really shows; nothing else tells it which.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { start } from './browser.mjs';
import { markDamage, takeIn } from './job.mjs';
import { BINARY } from './server.mjs';

/** The screen of the rendered captures, 708 × 398 mm at half a millimetre a pixel, with its dark frame. */
const SCREEN = { width: 1456, height: 836 };
const MM_PER_PX = 0.5;
const LIT_MM = 708;
/** Truth of the rendered door: the deeper of its two lows. */
const DEPTH_UM = 420;

const photoOf = (shows) => (shows === 'tags' ? 'panel.jpg' : `screen_${shows}.jpg`);

/** Puts a camera into a page whose picture is drawn by `window.point(name)`; frames come all the time, as a camera's do. */
async function fakeCamera(page, folder) {
  await page.route('**/fake-photo/*', async (route) => route.fulfill({ body: await readFile(join(folder, route.request().url().split('/').pop())), contentType: 'image/jpeg' }));
  await page.addInitScript(() => {
    const canvas = document.createElement('canvas');
    const context = canvas.getContext('2d');
    const photos = new Map();
    const load = async (name) => photos.get(name) ?? photos.set(name, await createImageBitmap(await (await fetch(`/fake-photo/${name}`)).blob())).get(name);
    let now = null;
    let disturbed = null;
    window.disturb = (how) => (disturbed = how);
    window.point = async (name) => void (now = await load(name));
    window.preload = (names) => Promise.all(names.map(load));
    let tick = 0;
    let drawn = null;
    setInterval(() => {
      if (!now) return;
      if (drawn?.[0] !== now || drawn[1] !== disturbed) {
        const scale = Math.min(1, 1600 / now.width);
        const [width, height] = [Math.round(scale * now.width), Math.round(scale * now.height)];
        if (canvas.width !== width) [canvas.width, canvas.height] = [width, height];
        context.filter = disturbed === 'blur' ? 'blur(4px)' : 'none';
        context.drawImage(now, disturbed === 'move' ? 9 : 0, 0, width, height);
        drawn = [now, disturbed];
      }
      // one pixel at the edge keeps the stream running, as a sensor's noise would
      context.fillStyle = tick++ % 2 ? '#000' : '#010101';
      context.fillRect(0, 0, 1, 1);
    }, 66);
    navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(15);
  });
}

/** Whether the canvas shows the wave that it says it does, in light. */
async function waveIsRight(board) {
  return board.evaluate(() => {
    const canvas = document.querySelector('[data-testid=board]');
    const found = /^([uv])(\d+)_(\d)$/.exec(canvas.dataset.shows);
    if (!found) return null;
    const [axis, periods, shift] = [found[1], Number(found[2]), Number(found[3]) / 4];
    const frame = 20;
    const [width, height] = [canvas.width - 2 * frame, canvas.height - 2 * frame];
    const pixels = canvas.getContext('2d').getImageData(frame, frame, width, height).data;
    let worst = 0;
    for (let k = 0; k < 500; k++) {
      const [x, y] = [(k * 37) % width, (k * 53) % height];
      const s = axis === 'u' ? (x + 0.5) / width : 1 - (y + 0.5) / height;
      const value = pixels[4 * (y * width + x)] / 255;
      const light = value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
      worst = Math.max(worst, Math.abs(light - 0.5 - 0.5 * Math.cos(2 * Math.PI * (periods * s + shift))));
    }
    return worst;
  });
}

export async function liveSession({ server, page, test, sound }) {
  const captures = join(server.folder, 'captures');
  if (!existsSync(captures)) execFileSync(BINARY, ['demo-captures', captures]);
  const folder = join(captures, 'demo_door_before');
  const job = {};
  const browser = await start({ webgl: false });
  let board;
  let camera;
  await test('live: a session offers addresses for screen and camera', async () => {
    await takeIn(page, { name: 'Live (invented)' });
    await markDamage(page);
    await page.getByRole('radio', { name: 'Read from photos' }).check();
    await page.getByRole('link', { name: 'Live session' }).click();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByText('Waiting for the screen').waitFor();
    job.address = await page.locator('.address').first().textContent();
    job.camera = await page.getByRole('link', { name: 'Use this device’s camera' }).getAttribute('href');
    await sound(page, 'live-1-offer');
  });
  await test('live: the screen is measured and shows its tags at its true pixels', async () => {
    const context = await browser.newContext({ viewport: SCREEN, baseURL: server.base });
    board = await context.newPage();
    await board.addInitScript(() => (document.documentElement.requestFullscreen = undefined));
    await board.goto(new URL(job.address).pathname);
    await board.getByRole('heading', { name: 'How large is this screen?' }).waitFor();
    assert.ok((await board.getByTestId('card').boundingBox()).width > 200);
    await board.screenshot({ path: 'e2e/shots/live-2-card.png' });
    await board.getByRole('radio', { name: 'By tape' }).check();
    await board.getByLabel('Width of the bright area').fill(String(LIT_MM));
    await board.getByRole('button', { name: 'Show the board' }).click();
    await board.waitForFunction(() => document.querySelector('[data-testid=board]').dataset.shows === 'tags');
    const size = await board.evaluate(() => {
      const canvas = document.querySelector('[data-testid=board]');
      return [canvas.width, canvas.height, canvas.getBoundingClientRect().width];
    });
    assert.deepEqual(size, [SCREEN.width, SCREEN.height, SCREEN.width]);
    assert.equal(LIT_MM / (SCREEN.width - 40), MM_PER_PX);
    await board.screenshot({ path: 'e2e/shots/live-3-tags.png' });
    await page.getByText('The screen is ready').waitFor();
  });
  await test('live: 26 photos in step, one blurred and one moved taken again', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, baseURL: server.base });
    camera = await context.newPage();
    await fakeCamera(camera, folder);
    await camera.goto(job.camera);
    const waves = ['u1', 'u6', 'u36', 'v1', 'v5', 'v20'].flatMap((wave) => [0, 1, 2, 3].map((k) => `screen_${wave}_${k}.jpg`));
    await camera.evaluate((names) => window.preload(names), ['setup.jpg', 'panel.jpg', ...waves]);
    await camera.evaluate(() => window.point('setup.jpg'));
    await camera.getByRole('button', { name: 'Open the camera' }).click();
    await camera.getByRole('button', { name: 'Take the set-up photo' }).waitFor();
    await camera.screenshot({ path: 'e2e/shots/live-4-setup.png', fullPage: true });
    await camera.getByRole('button', { name: 'Take the set-up photo' }).click();
    await camera.getByRole('button', { name: 'Start the run' }).waitFor({ timeout: 60_000 });
    // from now on the camera sees what the board shows
    let worst = 0;
    await board.exposeFunction('shows', async (name) => {
      await camera.evaluate((photo) => window.point(photo), photoOf(name));
      worst = Math.max(worst, (await waveIsRight(board)) ?? 0);
    });
    await board.evaluate(() => {
      const canvas = document.querySelector('[data-testid=board]');
      new MutationObserver(() => window.shows(canvas.dataset.shows)).observe(canvas, { attributes: true, attributeFilter: ['data-shows'] });
      return window.shows(canvas.dataset.shows);
    });
    const from = Date.now();
    await camera.getByRole('button', { name: 'Start the run' }).click();
    const turn = (least) => camera.waitForFunction((least) => Number(/^\d+/.exec(document.querySelector('[data-testid=turn]').textContent)[0]) >= least, least, { timeout: 120_000 });
    const refused = async (how, words) => {
      await camera.evaluate((how) => window.disturb(how), how);
      await camera.locator('.trouble', { hasText: words }).waitFor({ timeout: 60_000 });
      await camera.evaluate(() => window.disturb(null));
    };
    await turn(6);
    await refused('blur', /blurred/);
    await turn(14);
    await refused('move', /moved by 9\.\d px/);
    await camera.getByTestId('done').waitFor({ timeout: 180_000 });
    const seconds = (Date.now() - from) / 1000;
    const shots = Number(await camera.getByTestId('shots').textContent());
    console.log(`        25 photos of the run in ${seconds.toFixed(1)} s with the countdown, ${shots} shots, wave off by ${worst.toFixed(4)} of full light at most`);
    assert.ok(shots >= 27 && shots < 45, `${shots} shots: the blurred and the moved one must be taken again`);
    assert.ok(worst > 0.0005 && worst < 0.006, `the screen's light is off by ${worst}`);
  });
  await test('live: the capture is in the record and read by the queue', async () => {
    await page.getByTestId('map').waitFor({ timeout: 120_000 });
    const reading = page.url().split('/').pop();
    const facts = await page.evaluate(async (id) => (await fetch(`/api/readings/${id}`)).json(), reading);
    assert.equal(facts.frames.length, 26);
    const dropped = facts.frames.filter((frame) => !frame.ok);
    assert.deepEqual(dropped, [], JSON.stringify(dropped));
    const depth = -1000 * Math.min(...facts.spots.map((spot) => spot.height_mm));
    console.log(`        depth ${depth.toFixed(1)} µm for ${DEPTH_UM}; ${(100 * facts.read_fraction).toFixed(0)} % read`);
    assert.ok(Math.abs(depth / DEPTH_UM - 1) < 0.03, `depth ${depth} µm for ${DEPTH_UM}`);
    await sound(page, 'live-5-map');
  });
  await browser.close();
}
