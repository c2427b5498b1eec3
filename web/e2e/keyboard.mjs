// The same job without a pointer: every step by Tab, Enter, space and arrows.
import assert from 'node:assert/strict';

/** Presses Tab until the focus is on something whose accessible text matches; shows that it is visible. */
async function tabTo(page, pattern, most = 80) {
  for (let step = 0; step < most; step++) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() => {
      const element = document.activeElement;
      const label = element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent ?? '';
      const style = getComputedStyle(element.matches('input[type=radio], input[type=file]') ? element.closest('label') : element);
      return { label: label.trim(), seen: style.outlineStyle !== 'none' || (element.matches('path, g') && style.strokeWidth !== '0px') };
    });
    if (pattern.test(here.label)) {
      assert.ok(here.seen, `the focus on ${here.label} cannot be seen`);
      return;
    }
  }
  throw new Error(`${pattern} was not reached by ${most} Tabs`);
}

export async function keyboardOnly({ page, test }) {
  await test('keyboard: the first Tab offers to skip to the page', async () => {
    await page.goto('/');
    await page.getByRole('heading', { name: 'Jobs' }).waitFor();
    await tabTo(page, /Skip to the page/, 1);
    await page.keyboard.press('Enter');
    assert.equal(await page.evaluate(() => document.activeElement.id), 'main');
  });
  await test('keyboard: take in, choose a panel and a place', async () => {
    await tabTo(page, /Take a car in/);
    await page.keyboard.press('Enter');
    // No Tab before the new page stands and its heading has taken the focus, as someone who listens to it waits too.
    await page.waitForFunction(() => document.activeElement?.matches('h1') && /Take a car in/.test(document.activeElement.textContent));
    await tabTo(page, /^Customer/);
    await page.keyboard.type('Kit Invented');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Where is the damage?' }).waitFor();
    await tabTo(page, /^Bonnet/);
    await page.keyboard.press('Enter');
    await page.getByTestId('place-pad').waitFor();
    await page.waitForFunction(() => document.activeElement?.getAttribute('data-testid') === 'place-pad');
    await page.keyboard.press('ArrowLeft');
    await page.getByText('Mark at 45 % from the left and 50 % from the top').waitFor({ state: 'attached' });
    await tabTo(page, /Damage is here/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Count' }).waitFor();
  });
  await test('keyboard: count a hail dent on a line and take it back', async () => {
    await tabTo(page, /^Round/);
    await page.keyboard.press('ArrowRight');
    assert.ok(await page.getByRole('radio', { name: 'Hail' }).isChecked());
    await tabTo(page, /Count one of 25\smm/);
    await page.keyboard.press('Enter');
    await page.getByText('Hail, 25 mm').waitFor();
    await page.getByRole('button', { name: 'Undo' }).first().focus();
    await page.keyboard.press('Enter');
    await page.getByText('Nothing counted yet').waitFor();
  });
  await test('keyboard: a map answers to arrows, zoom, spots and a cut', async () => {
    const link = await page.evaluate(async () => {
      for (const row of await (await fetch('/api/jobs?search=&stage=')).json()) {
        const job = await (await fetch(`/api/jobs/${row.id}`)).json();
        for (const damage of job.damages) for (const capture of damage.captures) if (capture.readings[0]) return `#/jobs/${job.id}/damages/${damage.id}/readings/${capture.readings[0].id}`;
      }
    });
    assert.ok(link, 'no job has a reading');
    await page.goto('/' + link);
    await page.locator('ol button').first().waitFor();
    await page.getByTestId('map').focus();
    // The maps come after the list of spots.
    const silent = async () => (await page.getByTestId('readout').textContent()) === 'Touch the map';
    for (const until = Date.now() + 10_000; (await silent()) && Date.now() < until; ) await page.keyboard.press('ArrowRight');
    assert.ok(!(await silent()), 'an arrow moves the cross');
    await page.keyboard.press('n');
    await page.locator('ol button[aria-pressed=true]').waitFor();
    for (const key of ['+', '+', '-', '0', 'Escape', 'ArrowLeft', 'ArrowLeft', 'c']) await page.keyboard.press(key);
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowDown');
    await page.getByTestId('profile').waitFor();
  });
}
