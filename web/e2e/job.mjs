// A whole job: take in, damage, count, read photos, map, quote, report.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;

export async function takeIn(page, { name = 'Mara Invented', plate = 'EX 390 D', base = '' } = {}) {
  await page.goto(`${base}/#/new`);
  await page.getByLabel('Customer').fill(name);
  await page.getByLabel('Plate').fill(plate);
  await page.getByLabel('Make').fill('Vardo');
  await page.getByLabel('Model').fill('Kombi 4');
  await page.getByRole('button', { name: 'To the damage' }).click();
  await page.getByRole('heading', { name: 'Where is the damage?' }).waitFor();
}

export async function markDamage(page, panel = 'front_door_left') {
  await page.locator(`[data-panel=${panel}]`).click();
  const pad = page.getByTestId('place-pad');
  const box = await pad.boundingBox();
  await pad.click({ position: { x: box.width * 0.5, y: box.height * 0.6 } });
  await page.getByRole('button', { name: 'Damage is here' }).click();
  await page.getByRole('heading', { name: 'Count' }).waitFor();
}

export async function uploadCapture(page, files) {
  await page.getByRole('radio', { name: 'Read from photos' }).check();
  await page.getByLabel('Choose photos').setInputFiles(files);
}

export async function wholeJob({ page, server, width, test, sound }) {
  const at = (step) => `${width.name}: ${step}`;
  const shot = (name) => sound(page, `${width.name}-${name}`);

  await test(at('the list of jobs'), async () => {
    await page.goto('/');
    await page.getByRole('heading', { name: 'Jobs' }).waitFor();
    await shot('1-jobs');
  });
  await test(at('a VIN is checked while it is typed'), async () => {
    await page.goto('/#/new');
    // 49 CFR 565: the published example has the check digit X
    await page.getByLabel('VIN').fill('1M8GDM9AXKP042788');
    await page.getByText('The check digit is right').waitFor();
    await page.getByLabel('VIN').fill('1M8GDM9AXKP04278O');
    await page.locator('.wrong').waitFor();
    await page.getByLabel('VIN').fill('');
    await shot('2-take-in');
  });
  await test(at('a car is taken in and its damage marked'), async () => {
    await takeIn(page);
    await shot('3-car');
    await markDamage(page);
  });
  await test(at('dents are counted by touch and taken back'), async () => {
    const total = page.locator('.total');
    for (const [tap, count] of [['Count one of 20 mm', '1'], ['Count one of 20 mm', '2'], ['Count one of 30 mm', '3']]) {
      await page.getByRole('button', { name: tap }).click();
      await page.waitForFunction((text) => document.querySelector('.total')?.textContent === text, count);
    }
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await page.waitForFunction(() => document.querySelector('.total')?.textContent === '2');
    assert.equal(await total.textContent(), '2');
    await shot('4-count');
  });
  await test(at('a capture is sent and read, stage by stage'), async () => {
    await uploadCapture(page, await captureFiles(server.folder));
    await page.getByTestId('progress').waitFor();
    await page.getByRole('progressbar').waitFor();
    await shot('5-reading');
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
  });
  await test(at('the map tells a value with its doubt'), async () => {
    await page.locator('section h2', { hasText: 'spot' }).waitFor();
    await page.locator('ol button').first().click();
    await page.waitForFunction(() => /[−\d].*(µm|mm) ± /.test(document.querySelector('[data-testid=readout]')?.textContent ?? '') || /Not read/.test(document.querySelector('[data-testid=readout]')?.textContent ?? ''));
    const map = page.getByTestId('map');
    await map.scrollIntoViewIfNeeded();
    const box = await map.boundingBox();
    let read = 0;
    for (const [u, v] of [[0.4, 0.4], [0.5, 0.5], [0.6, 0.55], [0.45, 0.6]]) {
      await page.mouse.move(box.x + u * box.width, box.y + v * box.height);
      await page.mouse.down();
      await page.mouse.up();
      if (/(µm|mm) ± [\d.]+\sµm/.test(await page.getByTestId('readout').textContent())) read++;
    }
    assert.ok(read >= 2, `a value was shown at ${read} of 4 places`);
  });
  await test(at('a cut along a dragged line'), async () => {
    await page.getByRole('button', { name: 'Cut', exact: true }).click();
    const map = page.getByTestId('map');
    await map.scrollIntoViewIfNeeded();
    const box = await map.boundingBox();
    await page.mouse.move(box.x + 0.3 * box.width, box.y + 0.5 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.7 * box.width, box.y + 0.55 * box.height, { steps: 5 });
    await page.mouse.up();
    await page.getByTestId('profile').locator('path.line').first().waitFor();
    assert.match(await page.getByTestId('profile').textContent(), /mm long; lowest .* highest/);
    await shot('6-map');
  });
  await test(at('spots go into the quote'), async () => {
    await page.getByRole('button', { name: /Take .*spots? into the quote/ }).click();
    await page.getByText(/dents? taken over/).waitFor();
    await page.getByRole('link', { name: 'To the quote' }).click();
    await page.getByRole('heading', { name: 'What drove the hours' }).waitFor();
    const rows = page.locator('tbody tr');
    const before = await rows.count();
    assert.ok(before >= 2, `${before} lines`);
    await page.getByRole('button', { name: 'Add trim to take off' }).click();
    await page.getByRole('textbox', { name: 'What' }).fill('Door card');
    await page.getByRole('textbox', { name: /^Amount/ }).fill('0,8');
    await page.locator('tbody tr', { hasText: 'Door card' }).waitFor();
    await shot('7-quote');
  });
  await test(at('the report is a PDF'), async () => {
    await page.getByRole('link', { name: 'Papers', exact: true }).click();
    const [download] = await Promise.all([page.waitForEvent('download', { timeout: 60_000 }), page.getByRole('button', { name: 'Download the report' }).click()]);
    const bytes = await readFile(await download.path());
    assert.equal(bytes.subarray(0, 5).toString(), '%PDF-');
    assert.ok(bytes.length > 10_000, `${bytes.length} bytes`);
    await shot('8-papers');
  });
  await test(at('settings, in the bright theme'), async () => {
    await page.getByRole('button', { name: 'Bright screen, for outdoors' }).click();
    await page.goto('/#/settings');
    await page.getByRole('heading', { name: 'Settings' }).waitFor();
    await shot('9-settings-light');
    await page.goto('/#/settings/hours');
    await page.getByRole('textbox', { name: 'Base, h' }).waitFor();
    await shot('10-hours-light');
  });
}
