// Ways of pricing and hours that learn: the quote page at every width, with a shop that has timed twelve jobs.
import assert from 'node:assert/strict';
import { WIDTHS } from './browser.mjs';

const GOOD = 'panel;dents;10 mm;20 mm;35 mm\nMotorhaube;1-5;60;80;110,50\nhood;6+;90;120;1.150,00\n*;1+;40;50;66\n';
const table = (text) => ({ name: '2026 agreed.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
const dent = (across_mm, count) => ({ kind: 'hail', length_mm: across_mm, width_mm: across_mm, depth_mm: 0.03 * across_mm, metal: 'steel', access: 'open', place: 'flat', count });

/** A call of the API. */
async function call(server, method, path, body) {
  const answer = await fetch(server.base + path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
  assert.ok(answer.ok, `${method} ${path}: ${answer.status} ${await answer.clone().text()}`);
  return answer.status === 204 ? null : answer.json();
}

/** A job with two panels of hail; its id. */
async function hailJob(server, turn) {
  const job = await call(server, 'POST', '/api/jobs', { customer: { name: 'Mara Invented', address: '', phone: '', email: '' } });
  for (const panel of ['bonnet', 'roof']) {
    const damage = await call(server, 'POST', `/api/jobs/${job.id}/damages`, { panel, x: 0.5, y: 0.5, note: '' });
    for (const one of [dent(9, 5 + (turn % 4)), dent(15, 7), dent(32, 2)]) await call(server, 'POST', `/api/damages/${damage.id}/dents`, one);
  }
  return job.id;
}

export async function pricing({ page, server, test, sound }) {
  await test('twelve finished jobs are learned', async () => {
    for (let turn = 0; turn < 12; turn++) {
      const job = await hailJob(server, turn);
      const { quote } = await call(server, 'GET', `/api/jobs/${job}/quote`);
      const worked_s = 3600 * quote.hours.likely * 1.2 * Math.exp(0.4 * Math.sin(7 * turn));
      await call(server, 'PUT', `/api/jobs/${job}/worked`, { times: [{ worked_s }] });
    }
    const known = await call(server, 'GET', '/api/shop/hours/learned');
    assert.equal(known.jobs, 12);
  });
  for (const { name, width, height } of WIDTHS) {
    const at = (step) => `${name}: ${step}`;
    const gross = () => page.locator('tr.gross td.num').textContent();
    await page.setViewportSize({ width, height });
    const job = await hailJob(server, 0);
    await test(at('how well hours were predicted'), async () => {
      await page.goto(`/#/jobs/${job}/quote`);
      await page.getByText(/of 12 jobs came between low and high/).waitFor();
      await sound(page, `${name}-quote-hours`);
    });
    await test(at('a hail table with a hole is refused with its row and column'), async () => {
      await page.getByRole('radio', { name: 'Hail table' }).check();
      if (!(await page.getByText('A price is for').isVisible())) await page.getByText('Import a table').click();
      await page.getByLabel('Choose the CSV file').setInputFiles(table(GOOD.replace(';80;', ';;')));
      await page.locator('.trouble').getByText('line 2, column 20 mm: the price is missing').waitFor();
      await sound(page, `${name}-quote-hole`);
    });
    await test(at('the table prices by both size rules, side by side'), async () => {
      await page.getByLabel('Choose the CSV file').setInputFiles(table(GOOD));
      await page.getByTestId('size-rules').waitFor();
      // Bonnet: 5 at 60, 7 at 120, 2 at 110.50; roof by *: 40, 50, 66. With 19 % tax.
      await page.waitForFunction(() => document.querySelector('tr.gross td.num')?.textContent?.includes('531.34'));
      await page.getByRole('radio', { name: 'As most on the panel' }).check();
      // Both panels as up to 20 mm: 120 and 50.
      await page.waitForFunction(() => document.querySelector('tr.gross td.num')?.textContent?.includes('202.30'));
      const rules = await page.getByTestId('size-rules').textContent();
      assert.ok(rules.includes('531.34') && rules.includes('202.30'), rules);
      await sound(page, `${name}-quote-table`);
    });
    await test(at('by size and by the day'), async () => {
      await page.getByRole('radio', { name: 'By size' }).check();
      await page.getByRole('textbox', { name: /^Each dent/ }).fill('12,50');
      await page.waitForFunction(() => /^28 × |^14 × /.test(document.querySelector('tbody tr td')?.textContent ?? ''));
      await sound(page, `${name}-quote-size`);
      await page.getByRole('radio', { name: 'By the day' }).check();
      await page.getByRole('textbox', { name: /^A day/ }).fill('640');
      await page.getByRole('textbox', { name: /^Days/ }).fill('1,5');
      await page.waitForFunction(() => document.querySelector('tr.gross td.num')?.textContent?.includes('1,142.40'));
      assert.match(await gross(), /1,142\.40/);
    });
    await test(at('worked time is learned, and taken back'), async () => {
      const card = page.getByTestId('worked');
      await card.getByRole('radio', { name: 'Panel by panel' }).check();
      await card.getByRole('textbox').first().fill('1,5');
      await card.getByRole('button', { name: 'Learn from it' }).click();
      await card.getByText(/Worked 1\sh 30\smin/).waitFor();
      await page.getByText(/of 13 jobs/).first().waitFor();
      await card.scrollIntoViewIfNeeded();
      await sound(page, `${name}-quote-worked`);
      await card.getByRole('button', { name: 'Take the time back' }).click();
      await page.getByText(/of 12 jobs/).first().waitFor();
    });
  }
}
