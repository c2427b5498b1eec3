// Hail counted by touch: kept at once, found again after the browser was killed; a whole car in few touches.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { findBrowser, FLAGS, open, WIDTHS } from './browser.mjs';
import { takeIn } from './job.mjs';
import { sign } from './papers.mjs';
import { startServer } from './server.mjs';

export const call = async (server, path, method = 'GET', body) => {
  const answer = await fetch(server.base + path, { method, headers: { 'content-type': 'application/json' }, body: body && JSON.stringify(body) });
  assert.ok(answer.ok, `${method} ${path}: ${answer.status} ${await answer.clone().text()}`);
  return answer.status === 204 ? null : answer.json();
};
export const dentsOf = (job) => job.damages.reduce((sum, damage) => sum + damage.dents.reduce((all, one) => all + one.dent.count, 0), 0);
/** The count shown is `wanted`: it shows when it is on the disk. */
export const totals = (page, wanted) => page.locator(`[data-testid=hail][data-total="${wanted}"]`).waitFor();
export const total = (page) => page.getByTestId('hail').getAttribute('data-total').then(Number);
export const allSent = (page) => page.locator('header .waiting').waitFor({ state: 'detached', timeout: 30_000 });

/** A browser of its own whose processes can be killed, with a profile that stays. */
async function killable(profile) {
  const child = spawn(findBrowser(), [...FLAGS, `--user-data-dir=${profile}`, '--remote-debugging-port=0', 'about:blank'], { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const address = await new Promise((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (text) => {
      said += text;
      const found = said.match(/DevTools listening on (ws:\S+)/);
      if (found) resolve(found[1]);
    });
    child.once('exit', () => reject(new Error(`the browser ended: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const context = browser.contexts()[0];
  const page = context.pages()[0] ?? (await context.newPage());
  await page.setViewportSize({ width: 390, height: 844 });
  const kill = async () => {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    process.kill(-child.pid, 'SIGKILL');
    await ended;
    await browser.close().catch(() => {});
  };
  return { page, kill };
}

const SIZES = ['10 mm', '15 mm', '20 mm', '25 mm'];
const sizeButton = (page, size) => page.getByRole('button', { name: new RegExp(`One more of ${size}`) });

export async function hailKilled({ test }) {
  const server = await startServer();
  const profile = await mkdtemp(join(tmpdir(), 'dentwright-profile-'));
  let device = await killable(profile);
  try {
    let address = '';
    await test('a car is taken in, then the server is out of reach', async () => {
      await device.page.goto(`${server.base}/`);
      await device.page.evaluate(async () => void (await navigator.serviceWorker.ready));
      await takeIn(device.page, { name: 'Killed (invented)', base: server.base });
      await device.page.getByRole('link', { name: 'Count hail' }).click();
      await allSent(device.page);
      address = device.page.url();
      await server.cut();
    });
    let counted = 0;
    for (const round of [1, 2, 3]) {
      await test(`kill ${round}: every dent that was counted is found again`, async () => {
        const { page } = device;
        // Which panel was chosen is no entry: the browser writes it down when it likes.
        const roof = page.locator('[data-panel=roof]');
        if ((await roof.getAttribute('aria-pressed')) !== 'true') await roof.click();
        for (let k = 0; k < 31; k++) {
          await sizeButton(page, SIZES[k % 4]).click();
          counted++;
        }
        await totals(page, counted);
        // Nothing else is waited for: the process goes the moment the last touch shows.
        await device.kill();
        device = await killable(profile);
        await device.page.goto(address);
        await device.page.getByTestId('hail').waitFor();
        assert.equal(await total(device.page), counted);
      });
    }
    await test('when the server is back it has each dent once', async () => {
      await server.back();
      await allSent(device.page);
      const [job] = await call(server, '/api/jobs');
      const all = await call(server, `/api/jobs/${job.id}`);
      assert.equal(dentsOf(all), counted);
      assert.equal(await total(device.page), counted);
      assert.equal(all.damages.length, 1);
    });
  } finally {
    await device.kill().catch(() => {});
    await server.stop();
    await rm(profile, { recursive: true, force: true });
  }
}

/** Dents of each panel by size: a car of 180, as a storm leaves it. */
const CAR = {
  bonnet: { '10 mm': 12, '15 mm': 22, '20 mm': 9, '25 mm': 3 },
  roof: { '10 mm': 18, '15 mm': 27, '20 mm': 11, '25 mm': 4 },
  boot_lid: { '10 mm': 9, '15 mm': 13, '20 mm': 4 },
  front_wing_left: { '10 mm': 6, '15 mm': 5 },
  front_door_left: { '10 mm': 4, '15 mm': 6 },
  roof_rail_left: { '15 mm': 5, '20 mm': 3 },
  roof_rail_right: { '10 mm': 7, '15 mm': 8, '20 mm': 4 },
};
const MOST_ACTS = 260;
const MOST_MS = 240_000;

/**
 * What a person does, counted in the page itself: every press of a finger and every key that goes down, so that a
 * pasted VIN is two (control and V). A swipe is counted where the next thing to touch is not on the screen.
 */
async function counted(page) {
  await page.evaluate(() => {
    window.acts = { presses: 0, keys: 0 };
    addEventListener('pointerdown', () => window.acts.presses++, true);
    addEventListener('keydown', () => window.acts.keys++, true);
  });
  let swipes = 0;
  /** Touches a thing; many times at one place where that is asked for. */
  const touch = async (target, times = 1) => {
    await target.waitFor();
    const seen = await target.evaluate((element) => {
      const box = element.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const at = document.elementFromPoint(x, y);
      return y > 0 && y < innerHeight && at !== null && (element.contains(at) || at.contains(element));
    });
    if (!seen) swipes++;
    await target.tap();
    const box = times > 1 && (await target.boundingBox());
    for (let k = 1; k < times; k++) await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  };
  const acts = async () => ({ ...(await page.evaluate(() => window.acts)), swipes });
  return { touch, acts };
}

export async function hailDay({ browser, test, sound }) {
  const server = await startServer();
  const page = await open(browser, server.base, WIDTHS[0]);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  const button = (name, exact = true) => page.getByRole('button', { name, exact });
  try {
    await test('180 dents over 7 panels, from the call to the paid invoice', async () => {
      // Set once for the shop, not for each car.
      const shop = await call(server, '/api/shop');
      await call(server, '/api/shop', 'PUT', { ...shop, name: 'Line & Light (invented)', address: 'Hafenzeile 4\n10999 Erfundenstadt' });
      await call(server, '/api/shop/billing', 'PUT', { country: 'DE', vat_id: 'DE123456789' });
      await page.goto('/');
      // On the clipboard: from a message of the customer, or from the camera's own text recognition.
      await page.evaluate(() => navigator.clipboard.writeText('1M8GDM9AXKP042788'));
      const { touch, acts } = await counted(page);
      const begun = Date.now();

      await touch(page.getByRole('link', { name: 'Take a car in' }));
      await touch(page.getByLabel('Customer'));
      await page.keyboard.type('Mara Invented');
      await touch(page.getByLabel('Plate'));
      await page.keyboard.type('EX 390');
      await touch(page.getByLabel('VIN'));
      await page.keyboard.press('Control+V');
      assert.equal(await page.getByLabel('VIN').inputValue(), '1M8GDM9AXKP042788');
      await touch(button('To the damage'));

      await touch(page.getByRole('link', { name: 'Count hail' }));
      for (const [panel, sizes] of Object.entries(CAR)) {
        await touch(page.locator(`[data-panel=${panel}]`));
        for (const [size, many] of Object.entries(sizes)) await touch(sizeButton(page, size), many);
      }
      await totals(page, 180);

      await touch(page.getByRole('link', { name: 'Quote', exact: true }));
      await page.getByText('Price with tax').first().waitFor();
      await touch(page.getByRole('link', { name: 'Papers', exact: true }));
      await touch(button('Authorisation'));
      await page.getByRole('img', { name: 'Pad to sign on' }).waitFor();
      await sign(page);
      await touch(button('Issue it'));
      await page.getByText('signed by', { exact: false }).waitFor();
      await touch(button('Invoice'));
      await touch(button('Issue it'));
      await page.getByRole('link', { name: /Invoice I-/ }).waitFor();
      await touch(button('Receipt'));
      await touch(button('Issue it'));
      await page.getByRole('link', { name: /Receipt R-/ }).waitFor();

      const took = Date.now() - begun;
      const { presses, keys, swipes } = await acts();
      const all = presses + keys + swipes;
      console.log(`        ${presses} presses + ${keys} keys + ${swipes} swipes = ${all} in ${(took / 1000).toFixed(0)} s`);
      assert.ok(presses >= 180 + 7 && keys >= 13 + 6 + 2, 'the count misses something');
      assert.ok(all < MOST_ACTS, `${all} touches and keys`);
      assert.ok(took < MOST_MS, `${took} ms`);
    });
    await test('and the record has each dent, the signature, the invoice and the payment', async () => {
      const [row] = await call(server, '/api/jobs');
      const job = await call(server, `/api/jobs/${row.id}`);
      assert.equal(dentsOf(job), 180);
      const found = Object.fromEntries(job.damages.map((damage) => [damage.panel, Object.fromEntries(damage.dents.map(({ dent }) => [`${dent.length_mm} mm`, dent.count]))]));
      assert.deepEqual(found, CAR);
      assert.equal(job.car.vin, '1M8GDM9AXKP042788');
      const papers = await call(server, `/api/jobs/${row.id}/papers`);
      assert.deepEqual(papers.map((paper) => paper.kind), ['authorisation', 'invoice', 'receipt']);
      assert.equal(papers[0].signed_by, 'Mara Invented');
      assert.equal(papers[2].gross, papers[1].gross);
      assert.ok(Number(papers[1].gross) > 0);
      assert.ok(papers[1].files.some((file) => file.name === 'invoice.ubl.xml'), 'the e-invoice is there');
    });
    await test('one tap too many is taken back, on the panel and on +1', async () => {
      await page.goto('/#/jobs');
      await page.goto(`/#/jobs/${(await call(server, '/api/jobs'))[0].id}/hail`);
      await page.locator('[data-panel=roof]').tap();
      const before = await total(page);
      await page.locator('[data-panel=roof]').tap();
      await button('+1', false).tap();
      await page.waitForTimeout(500);
      const after = await total(page);
      assert.ok(after - before >= 1 && after - before <= 2, `${before} to ${after}`);
      for (let k = after - 180; k > 0; k--) await button('Undo').first().tap();
      await totals(page, 180);
      await allSent(page);
      assert.equal(dentsOf(await call(server, `/api/jobs/${(await call(server, '/api/jobs'))[0].id}`)), 180);
    });
    for (const { name, width, height } of WIDTHS) {
      await test(`${name}: the page to count on`, async () => {
        await page.setViewportSize({ width, height });
        await sound(page, `${name}-hail`);
      });
    }
  } finally {
    await page.context().close();
    await server.stop();
  }
}
