// Nothing typed is lost on a reload; what is removed can be brought back.
import assert from 'node:assert/strict';
import { markDamage, takeIn } from './job.mjs';

export async function draftsAndUndo({ page, test, sound }) {
  await test('what is typed survives a reload', async () => {
    await page.goto('/#/new');
    await page.getByLabel('Customer').fill('Half Typed (invented)');
    await page.getByLabel('Plate').fill('EX 9');
    await page.reload();
    assert.equal(await page.getByLabel('Customer').inputValue(), 'Half Typed (invented)');
    assert.equal(await page.getByLabel('Plate').inputValue(), 'EX 9');
    await page.getByRole('button', { name: 'Empty the form' }).click();
  });
  await test('a removed damage comes back with its dents', async () => {
    await takeIn(page, { name: 'Undo (invented)' });
    await markDamage(page, 'bonnet');
    await page.getByRole('button', { name: 'Count one of 15 mm' }).click();
    await page.getByText('Round, 15 mm').waitFor();
    await page.getByRole('link', { name: 'Damage', exact: true }).click();
    await page.getByText('1 dent', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: 'Remove the damage: Bonnet' }).click();
    await page.getByText('None marked yet.').waitFor();
    await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('link', { name: /Bonnet/ }).first().waitFor();
    assert.match(await page.locator('li.damage').textContent(), /1 dent/);
  });
  await test('German, in inches and mils', async () => {
    const before = await page.evaluate(async () => (await fetch('/api/shop')).json());
    await page.goto('/#/settings');
    await page.getByRole('radio', { name: 'Deutsch' }).check();
    await page.getByRole('radio', { name: 'inch, mil' }).check();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('heading', { name: 'Einstellungen' }).waitFor();
    await page.goto('/#/');
    await page.getByRole('heading', { name: 'Aufträge' }).waitFor();
    await sound(page, 'german');
    await page.evaluate((shop) => fetch('/api/shop', { method: 'PUT', headers: { 'content-type': 'application/json' }, body: JSON.stringify(shop) }), before);
  });
}
