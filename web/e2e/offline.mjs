// Without network: the app opens, takes everything in, and sends it later; two devices lose nothing.
import assert from 'node:assert/strict';
import { open, WIDTHS } from './browser.mjs';
import { allSent, call, dentsOf, totals } from './hail.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles, startServer } from './server.mjs';

const READ_MS = 120_000;

/** A photo that can be shown, made in the page. */
const photo = (page) =>
  page.evaluate(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 320, height: 200 });
    canvas.getContext('2d').fillRect(20, 20, 90, 60);
    return canvas.toDataURL('image/jpeg').split(',')[1];
  });
const ready = (page) => page.evaluate(async () => void (await navigator.serviceWorker.ready));
const waiting = (page) => page.locator('header .waiting').textContent().then(Number);

/** How many colours the map at work is drawn in: an empty one has the few of its frame. */
const colours = (page) =>
  page.getByTestId('marked-panel').locator('canvas').evaluate((canvas) => {
    const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    return new Set(new Uint32Array(data.buffer)).size;
  });

export async function offline({ browser, server: { folder }, test, sound }) {
  const server = await startServer();
  const page = await open(browser, server.base, WIDTHS[0]);
  try {
    await test('the app can be installed: manifest, icons, worker, their headers', async () => {
      await page.goto('/');
      await ready(page);
      const told = await page.evaluate(async () => {
        const of = async (path) => {
          const answer = await fetch(path);
          return { ok: answer.ok, type: answer.headers.get('content-type'), keep: answer.headers.get('cache-control'), csp: answer.headers.get('content-security-policy') };
        };
        const manifest = await (await fetch('./manifest.webmanifest')).json();
        return { manifest, page: await of('./manifest.webmanifest'), worker: await of('./sw.js'), icons: await Promise.all(manifest.icons.map((icon) => of(icon.src))) };
      });
      assert.match(told.page.type, /^application\/manifest\+json/);
      assert.match(told.worker.type, /^(text|application)\/javascript/);
      assert.equal(told.worker.keep, 'no-cache');
      assert.match(told.worker.csp, /default-src 'self'/);
      assert.ok(told.icons.length >= 3 && told.icons.every((icon) => icon.ok && /^image\//.test(icon.type)));
      assert.equal(told.manifest.display, 'standalone');
      const held = await page.evaluate(async () => (await (await caches.open((await caches.keys())[0])).keys()).map((one) => new URL(one.url).pathname));
      assert.ok(held.includes('/') && held.some((path) => path.endsWith('.js')) && held.some((path) => path.endsWith('.css')) && held.some((path) => path.endsWith('.woff2')), held.join(' '));
      assert.ok(!held.some((path) => path.startsWith('/api')), 'nothing of the shop is in the worker');
    });
    await test('with the network cut it opens, takes a car in, counts, notes and photographs', async () => {
      await server.cut();
      await page.reload();
      await page.getByRole('heading', { name: 'Jobs' }).waitFor();
      await takeIn(page, { name: 'Far Away (invented)', plate: 'EX 7' });
      await page.getByRole('link', { name: 'Count hail' }).tap();
      await page.locator('[data-panel=bonnet]').tap();
      for (let k = 0; k < 9; k++) await page.getByRole('button', { name: /One more of 15\smm/ }).tap();
      await page.getByRole('link', { name: 'Damage', exact: true }).tap();
      await markDamage(page, 'front_door_left');
      await page.getByRole('button', { name: 'Count one of 20 mm' }).tap();
      await page.getByLabel('Note', { exact: true }).fill('crease below the line');
      await page.getByLabel('Note', { exact: true }).blur();
      const buffer = Buffer.from(await photo(page), 'base64');
      await page.locator('input[type=file][accept*=jpeg]').last().setInputFiles([{ name: 'door.jpg', mimeType: 'image/jpeg', buffer }]);
      await page.getByText('One photo waits on this device.').waitFor();
      await page.getByRole('link', { name: 'Car', exact: true }).tap();
      await page.getByLabel('Colour').fill('blue');
      await page.getByRole('button', { name: 'Save' }).tap();
      await page.getByRole('link', { name: 'Time', exact: true }).tap();
      await page.getByTestId('clock').getByRole('button', { name: /^Push/ }).tap();
      await page.getByTestId('clock').getByRole('button', { name: /^Push/, pressed: true }).waitFor();
      await page.getByTestId('clock').getByRole('button', { name: /^Tap/ }).tap();
      await page.getByTestId('clock').getByRole('button', { name: /^Tap/, pressed: true }).waitFor();
      await sound(page, '390-offline-clock');
      await page.getByRole('link', { name: 'Car', exact: true }).tap();
      assert.equal(await waiting(page), 1 + 9 + 1 + 1 + 1 + 1 + 1 + 2);
      await sound(page, '390-offline-car');
    });
    await test('all of it is there after the page was closed and opened, still without network', async () => {
      await page.goto('about:blank');
      await page.goto('/');
      await page.getByText('not sent yet').waitFor();
      await sound(page, '390-offline-jobs');
      await page.getByRole('link', { name: /Far Away/ }).tap();
      await page.getByText('9 dents').first().waitFor();
      await page.getByRole('link', { name: /entries wait/ }).tap();
      await page.getByText('out of reach', { exact: false }).first().waitFor();
      await sound(page, '390-offline-waiting');
    });
    await test('it is sent when the server is reached again, once', async () => {
      await server.back();
      await allSent(page);
      const rows = await call(server, '/api/jobs');
      assert.equal(rows.length, 1);
      const job = await call(server, `/api/jobs/${rows[0].id}`);
      assert.equal(dentsOf(job), 10);
      const door = job.damages.find((damage) => damage.panel === 'front_door_left');
      assert.deepEqual([door.note, door.photos.length, job.car.colour], ['crease below the line', 1, 'blue']);
      assert.equal(rows[0].number.length > 4, true);
      const { entries } = await call(server, `/api/jobs/${rows[0].id}/times`);
      assert.deepEqual(entries.map(({ kind, stopped }) => [kind, stopped !== null]), [['push', true], ['tap', false]]);
    });
    await test('the map of a piece of work that was open is there after a cold reload without network', async () => {
      await takeIn(page, { name: 'At Work (invented)', plate: 'EX 8' });
      await markDamage(page);
      await uploadCapture(page, await captureFiles(folder));
      await page.getByTestId('map').waitFor({ timeout: READ_MS });
      await page.goto(`${page.url()}/work`);
      // The page has what it needs besides the maps, which were held when the reading was looked at.
      await page.getByTestId('marked-panel').locator('canvas').waitFor();
      await page.waitForFunction(() => caches.open('maps-of-readings').then((shelf) => shelf.keys()).then((all) => all.length === 3));
      // What the browser keeps by itself it may drop at any time.
      const device = await page.context().newCDPSession(page);
      await device.send('Network.clearBrowserCache');
      await server.cut();
      await page.reload();
      await page.getByTestId('marked-panel').locator('canvas').waitFor();
      for (const until = Date.now() + 10_000; (await colours(page)) < 100 && Date.now() < until; ) await page.waitForTimeout(200);
      assert.ok((await colours(page)) >= 100, `the map has ${await colours(page)} colours`);
      await sound(page, '390-offline-work');
    });
    await test('and so is its plan', async () => {
      await server.back();
      await page.goto(page.url().replace(/work$/, 'plan'));
      await page.getByRole('button', { name: 'Make the plan' }).tap();
      await page.getByTestId('plan-verdict').waitFor({ timeout: READ_MS });
      await server.cut();
      await page.reload();
      await page.getByTestId('plan-verdict').waitFor();
      await sound(page, '390-offline-plan');
    });
  } finally {
    await page.context().close();
    await server.stop();
  }
}

export async function twoDevices({ browser, test, sound }) {
  const server = await startServer();
  const [one, two] = [await open(browser, server.base, WIDTHS[0]), await open(browser, server.base, WIDTHS[1])];
  try {
    let job = '';
    const edit = async (page, values) => {
      await page.getByRole('link', { name: 'Car', exact: true }).click();
      for (const [label, value] of Object.entries(values)) await page.getByLabel(label, { exact: true }).fill(value);
      await page.getByRole('button', { name: 'Save' }).click();
    };
    const count = async (page, many) => {
      await page.goto(`/#/jobs/${job}/hail`);
      await page.locator('[data-panel=roof]').click();
      for (let k = 0; k < many; k++) await page.getByRole('button', { name: /One more of 15\smm/ }).click();
    };
    await test('two devices know one job, and both lose the network', async () => {
      await takeIn(one, { name: 'Both (invented)', plate: 'EX 2' });
      await allSent(one);
      job = (await call(server, '/api/jobs'))[0].id;
      await two.goto(`/#/jobs/${job}`);
      await two.getByRole('heading', { name: 'Where is the damage?' }).waitFor();
      await server.cut();
    });
    await test('both edit it: different fields, one field both, dents of one panel both', async () => {
      await edit(one, { Phone: '030 1', Colour: 'red' });
      await edit(two, { Plate: 'EX 22', Colour: 'blue' });
      await count(one, 5);
      await count(two, 4);
      await Promise.all([totals(one, 5), totals(two, 4)]);
    });
    await test('back in reach: fields are laid together, dents add up, the one field is to be chosen', async () => {
      await server.back();
      await one.waitForFunction(() => !document.querySelector('header .waiting') || /^0$/.test(document.querySelector('header .waiting').textContent.trim()), null, { timeout: 30_000 });
      await two.waitForFunction(() => !document.querySelector('header .waiting') || /^0$/.test(document.querySelector('header .waiting').textContent.trim()), null, { timeout: 30_000 });
      const laid = await call(server, `/api/jobs/${job}`);
      assert.deepEqual([laid.customer.phone, laid.car.plate, dentsOf(laid)], ['030 1', 'EX 22', 9]);
      assert.ok(['red', 'blue'].includes(laid.car.colour));
      assert.equal(laid.damages.length, 1);
      const clashes = [];
      for (const page of [one, two]) {
        await page.goto('/#/waiting');
        await page.getByRole('heading', { name: 'Waiting to be sent' }).waitFor();
        if ((await page.getByTestId('clash').count()) > 0) clashes.push(page);
      }
      assert.equal(clashes.length, 1, 'one of them is asked');
      const [late] = clashes;
      const text = await late.getByTestId('clash').textContent();
      assert.ok(text.includes('red') && text.includes('blue') && text.includes('Colour'), text);
      await sound(late, 'two-devices-clash');
      const mine = laid.car.colour === 'red' ? 'blue' : 'red';
      await late.getByRole('button', { name: /From this device/ }).click();
      await allSent(late);
      assert.equal((await call(server, `/api/jobs/${job}`)).car.colour, mine);
      assert.equal(await late.getByTestId('clash').count(), 0);
    });
    await test('a clash stays on the device until somebody chooses', async () => {
      await one.goto(`/#/jobs/${job}/car`);
      await one.locator('summary').first().click();
      await one.getByLabel('E-mail').fill('b@example.org');
      const other = await call(server, `/api/jobs/${job}/edits`, 'POST', { edits: [{ field: '/customer/email', base: '', to: 'a@example.org' }] });
      assert.deepEqual(other.clashes, []);
      await one.getByRole('button', { name: 'Save' }).click();
      await one.locator('header .waiting').waitFor();
      await one.waitForFunction(() => document.querySelector('header .waiting')?.textContent.trim() === '0');
      await one.reload();
      await one.locator('header .waiting').click();
      await one.getByTestId('clash').getByRole('button', { name: /a@example.org/ }).click();
      await one.locator('header .waiting').waitFor({ state: 'detached' });
      assert.equal((await call(server, `/api/jobs/${job}`)).customer.email, 'a@example.org');
    });
  } finally {
    await one.context().close();
    await two.context().close();
    await server.stop();
  }
}
