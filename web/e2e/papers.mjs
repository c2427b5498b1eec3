// Papers: issued, signed with a finger, billed, paid; the page at every width, the list and its files.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn } from './job.mjs';

const put = (page, path, body) =>
  page.evaluate(([path, body]) => fetch(path, { method: 'PUT', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }).then((answer) => answer.ok), [path, body]);

/** Draws a signature with the pointer. */
export async function sign(page) {
  const pad = page.getByRole('img', { name: 'Pad to sign on' });
  await pad.evaluate((element) => element.scrollIntoView({ block: 'center', behavior: 'instant' }));
  const box = await pad.boundingBox();
  const at = (x, y) => [box.x + x * box.width, box.y + y * box.height];
  for (const stroke of [[[0.1, 0.6], [0.3, 0.2], [0.4, 0.7], [0.6, 0.3], [0.8, 0.6]], [[0.2, 0.85], [0.8, 0.85]]]) {
    await page.mouse.move(...at(...stroke[0]));
    await page.mouse.down();
    for (const place of stroke.slice(1)) await page.mouse.move(...at(...place), { steps: 12 });
    await page.mouse.up();
  }
}

export async function papers({ page, test, sound }) {
  await test('a job is priced and the shop can bill', async () => {
    await takeIn(page, { name: 'Papers (invented)' });
    await markDamage(page, 'bonnet');
    await page.getByRole('button', { name: 'Count one of 15 mm' }).click();
    await page.getByText('Round, 15 mm').waitFor();
    const shop = await page.evaluate(async () => (await fetch('/api/shop')).json());
    assert.ok(await put(page, '/api/shop', { ...shop, name: 'Line & Light (invented)', address: 'Hafenzeile 4\n10999 Erfundenstadt' }));
    assert.ok(await put(page, '/api/shop/billing', { country: 'DE', vat_id: 'DE123456789' }));
    await page.getByRole('link', { name: 'Papers', exact: true }).first().click();
    await page.getByRole('heading', { name: 'Issue a paper' }).waitFor();
  });
  await test('an authorisation wants a signature; undo and clear work', async () => {
    await page.getByRole('button', { name: 'Authorisation' }).click();
    await page.getByRole('button', { name: 'Issue it' }).click();
    await page.locator('.trouble').waitFor();
    await sign(page);
    await page.getByRole('button', { name: 'Last stroke away' }).click();
    assert.equal(await page.locator('svg[role=img] path').count(), 1);
    await page.getByRole('button', { name: 'Clear' }).click();
    assert.equal(await page.locator('svg[role=img] path').count(), 0);
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: the pad to sign on`, async () => {
      await page.setViewportSize({ width, height });
      await page.getByRole('button', { name: 'Authorisation' }).click();
      await sign(page);
      await sound(page, `${name}-papers-sign`);
    });
  }
  await test('signed, billed and paid', async () => {
    await page.getByRole('button', { name: 'Issue it' }).click();
    await page.getByText('signed by', { exact: false }).waitFor();
    await page.getByRole('button', { name: 'Invoice' }).click();
    await page.getByRole('button', { name: 'Issue it' }).click();
    await page.getByRole('link', { name: /Invoice I-/ }).waitFor();
    await page.getByRole('button', { name: 'Receipt' }).click();
    await page.getByRole('button', { name: 'Issue it' }).click();
    await page.getByRole('link', { name: /Receipt R-/ }).waitFor();
    const href = await page.getByRole('link', { name: /Invoice I-/ }).getAttribute('href');
    const head = await page.evaluate(async (path) => (await (await fetch(path)).text()).slice(0, 5), href);
    assert.equal(head, '%PDF-');
    for (const form of ['UBL', 'CII']) assert.ok(await page.getByRole('link', { name: form }).first().isVisible());
  });
  await test('a second invoice is refused in words', async () => {
    await page.getByRole('button', { name: 'Invoice' }).click();
    await page.getByRole('button', { name: 'Issue it' }).click();
    await page.locator('.trouble').waitFor();
    assert.match(await page.locator('.trouble').textContent(), /credit note/);
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  });
  for (const { name, width, height } of WIDTHS) {
    await test(`${name}: the list of papers`, async () => {
      await page.setViewportSize({ width, height });
      await page.getByText('How the shop bills').click();
      await page.getByLabel('Country of the shop').waitFor();
      await sound(page, `${name}-papers`);
      await page.getByText('How the shop bills').click();
    });
  }
}
