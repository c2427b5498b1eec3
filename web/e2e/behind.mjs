// What is behind a panel, drawn with a finger; which tool reaches; the shop's tools.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';
import { markDamage, takeIn, uploadCapture } from './job.mjs';
import { captureFiles } from './server.mjs';

const READ_MS = 120_000;
const REACH_MS = 60_000;

export async function behind({ page, server, test, sound }) {
  const canvas = page.getByTestId('behind-canvas');
  const drag = async (tool, from, to) => {
    await page.getByRole('radio', { name: tool, exact: true }).check();
    await canvas.scrollIntoViewIfNeeded();
    const box = await canvas.boundingBox();
    await page.mouse.move(box.x + from[0] * box.width, box.y + from[1] * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + to[0] * box.width, box.y + to[1] * box.height, { steps: 4 });
    await page.mouse.up();
  };
  const touch = async (x, y) => {
    const found = page.waitForResponse((one) => one.url().endsWith('/reach'), { timeout: REACH_MS });
    const box = await canvas.boundingBox();
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
    return (await found).json();
  };
  let damage = '';

  await test('behind: openings, a brace and an airbag are drawn with a finger', async () => {
    await takeIn(page, { name: 'Behind Invented', plate: 'EX 6 BE' });
    await markDamage(page);
    await uploadCapture(page, await captureFiles(server.folder, 'demo_door_before'));
    await page.getByTestId('map').waitFor({ timeout: READ_MS });
    await page.getByRole('link', { name: 'Plan the repair' }).click();
    await page.getByRole('link', { name: 'Draw what is behind' }).click();
    damage = page.url().split('/damages/')[1].split('/')[0];
    await drag('Opening', [0.3, 0.65], [0.7, 0.85]);
    await page.getByLabel('What it is').fill('speaker');
    await page.getByLabel('Trim to take off first').fill('door lining');
    await drag('Brace', [0.05, 0.3], [0.95, 0.32]);
    await page.getByRole('checkbox', { name: 'A bar may be levered over it' }).check();
    await drag('Airbag, tensioner', [0.05, 0.75], [0.15, 0.9]);
    await drag('Opening', [0.5, 0.5], [0.505, 0.505]);
    assert.equal(await page.getByRole('list', { name: 'What was drawn' }).getByRole('listitem').count(), 3, 'a mere touch draws nothing');
    await page.getByLabel('From skin to inner sheet').fill('70');
    await page.getByLabel('From skin to inner sheet').blur();
    await sound(page, 'behind-1-drawn');
    await page.getByRole('button', { name: 'Keep the drawing' }).click();
    await page.getByRole('button', { name: 'Kept' }).waitFor();
    const kept = await (await fetch(`${server.base}/api/damages/${damage}/behind`)).json();
    assert.deepEqual(kept.side.walls[0].openings.map((one) => [one.name, one.trim]), [['speaker', 'door lining']]);
    assert.equal(kept.side.walls[0].origin[2], -70);
    assert.deepEqual(kept.side.behind.map((one) => one.kind), ['airbag']);
  });
  await test('behind: what reaches a place, and what stands in the way elsewhere', async () => {
    await page.getByRole('radio', { name: 'What reaches here?' }).check();
    const near = await touch(0.5, 0.55);
    assert.ok(near.reaches.length > 0, JSON.stringify(near.blocked));
    await page.getByTestId('reaches').getByText('Through speaker of inner sheet').first().waitFor();
    assert.match(await page.getByTestId('reaches').textContent(), /door lining off first/);
    await sound(page, 'behind-2-reaches');
    const edge = await touch(0.5, 0.045);
    assert.deepEqual(edge.reaches, []);
    await page.getByTestId('reaches').getByText('Nothing reaches here').waitFor();
  });
  await test('behind: the drawing is there again, and can be forgotten', async () => {
    await page.reload();
    const list = page.getByRole('list', { name: 'What was drawn' });
    await list.getByRole('button', { name: /speaker/ }).waitFor();
    assert.equal(await list.getByRole('listitem').count(), 3);
    for (const { name, width, height } of WIDTHS) {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-behind-3`);
    }
    await page.getByRole('button', { name: 'Forget the drawing' }).click();
    await list.waitFor({ state: 'detached' });
    assert.equal(await (await fetch(`${server.base}/api/damages/${damage}/behind`)).json(), null);
  });
  await test('rack: a bar is added and drawn, a tip changed, all kept; back to the starter rack and undone', async () => {
    await page.goto('/#/settings/rack');
    const cards = page.getByTestId('tool-card');
    await cards.first().waitFor();
    const count = await cards.count();
    await page.getByRole('button', { name: 'Add a bar' }).click();
    const mine = cards.nth(count);
    await mine.getByLabel('Name').fill('Long hook');
    await mine.getByLabel('Name').blur();
    const drawing = mine.locator('svg.open');
    await drawing.scrollIntoViewIfNeeded();
    const box = await drawing.boundingBox();
    await page.mouse.click(box.x + 0.9 * box.width, box.y + 0.9 * box.height);
    await mine.getByRole('group').or(mine.locator('circle')).nth(2).waitFor({ state: 'attached' });
    await page.getByRole('group', { name: 'Small ball' }).getByLabel('Radius').fill('7');
    await page.getByRole('group', { name: 'Small ball' }).getByLabel('Radius').blur();
    for (const { name, width, height } of WIDTHS) {
      await page.setViewportSize({ width, height });
      await sound(page, `${name}-rack`);
    }
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Saved', { exact: true }).waitFor();
    const kept = await (await fetch(`${server.base}/api/rack`)).json();
    assert.equal(kept.tool.at(-1).name, 'Long hook');
    assert.equal(kept.tool.at(-1).line.length, 4);
    assert.equal(kept.tip.find((one) => one.name === 'ball_6').radius, 7);
    await page.getByRole('button', { name: 'Back to the rack that comes' }).click();
    await page.waitForFunction((many) => document.querySelectorAll('[data-testid=tool-card]').length === many, count);
    await page.getByRole('button', { name: 'Undo' }).last().click();
    await page.waitForFunction((many) => document.querySelectorAll('[data-testid=tool-card]').length === many, count + 1);
    await page.getByRole('button', { name: 'Add a bar' }).click();
    await cards.nth(count + 1).getByLabel('Name').fill('Long hook');
    await cards.nth(count + 1).getByLabel('Name').blur();
    await page.getByText('A name is empty or comes twice').waitFor();
    assert.ok(await page.getByRole('button', { name: 'Save', exact: true }).isDisabled());
    await fetch(`${server.base}/api/rack`, { method: 'DELETE' });
  });
}
