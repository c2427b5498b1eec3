// A phone in the same network: a stranger first, paired by the code, then at work.
import assert from 'node:assert/strict';
import { open, WIDTHS } from './browser.mjs';
import { startServer } from './server.mjs';

export async function pairing({ browser, test }) {
  const server = await startServer('--lan');
  try {
    const offer = await fetch(`${server.base}/api/pair/offer`, { method: 'POST' }).then((answer) => answer.json());
    if (offer.code === 'closed') {
      console.log('skipped a phone is paired by its code: this machine has no address of its own in a network');
      return;
    }
    const outside = new URL(offer.address).origin;
    const page = await open(browser, outside, WIDTHS[0]);
    await test('a stranger in the network sees the pairing page and no data', async () => {
      const answer = await fetch(`${outside}/api/jobs`);
      assert.equal(answer.status, 401);
      await page.goto('/');
      await page.getByRole('heading', { name: 'Pair this device' }).waitFor();
      // what the browser tells about the refusals is expected here
      page.troubles.splice(0);
    });
    await test('a phone is paired by the address in the QR picture', async () => {
      await page.goto('about:blank');
      await page.goto(offer.address);
      await page.getByRole('heading', { name: 'Jobs' }).waitFor();
      await page.reload();
      await page.getByRole('heading', { name: 'Jobs' }).waitFor();
    });
    await page.context().close();
  } finally {
    await server.stop();
  }
}
