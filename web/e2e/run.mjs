// Runs the browser tests and ends with one line, `N passed, N failed`. Names after it run those scenarios alone:
// `npm run e2e -- liveSession`.
import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { arrivalOfACar, badEntries } from './arrival.mjs';
import { axe, open, overflow, smallTargets, start, WIDTHS } from './browser.mjs';
import { badUploads } from './bad.mjs';
import { behind } from './behind.mjs';
import { beforeAndAfter } from './change.mjs';
import { theDay } from './day.mjs';
import { gaugeDepth } from './gauge.mjs';
import { phoneLens } from './cameras.mjs';
import { wholeJob } from './job.mjs';
import { hailDay, hailKilled } from './hail.mjs';
import { keyboardOnly } from './keyboard.mjs';
import { liveSession } from './live.mjs';
import { mirrorPage } from './mirror.mjs';
import { metal } from './metal.mjs';
import { offline, twoDevices } from './offline.mjs';
import { pairing } from './pair.mjs';
import { papers } from './papers.mjs';
import { plan } from './plan.mjs';
import { pricing } from './pricing.mjs';
import { rehearse } from './rehearse.mjs';
import { sheets } from './sheets.mjs';
import { startServer } from './server.mjs';
import { draftsAndUndo } from './undo.mjs';

const only = process.argv.slice(2);
const wanted = (scenario) => only.length === 0 || only.includes(scenario.name);
const SHOTS = join(dirname(fileURLToPath(import.meta.url)), 'shots');
let passed = 0;
let failed = 0;

/** One thing that must hold. What went wrong is printed; the run goes on. */
async function test(name, work) {
  try {
    await work();
    passed++;
    console.log(`ok      ${name}`);
  } catch (error) {
    failed++;
    console.log(`FAILED  ${name}\n        ${String(error?.message ?? error).split('\n').slice(0, 6).join('\n        ')}`);
  }
}

/** A page at rest asks for one thing no more often while it is looked at. */
const OFTEN = 8;

/** What holds on every page; with a picture for the eye. */
async function sound(page, name) {
  page.asked?.clear();
  await page.waitForTimeout(300);
  const often = [...(page.asked ?? [])].filter(([, times]) => times > OFTEN);
  await page.screenshot({ path: join(SHOTS, `${name}.png`), fullPage: true });
  const troubles = [
    ...(await smallTargets(page)).map((text) => `touch target under 44 px: ${text}`),
    ...((await overflow(page)) > 0 ? ['the page is wider than the screen'] : []),
    ...(await axe(page)).map((text) => `accessibility: ${text}`),
    ...often.map(([url, times]) => `asked ${times} times in a moment: ${url}`),
    ...page.troubles.splice(0).map((text) => `the page reports: ${text}`),
  ];
  if (troubles.length > 0) throw new Error(troubles.join('\n'));
}

await mkdir(SHOTS, { recursive: true });
const server = await startServer();
const browser = await start();
try {
  for (const width of wanted(wholeJob) ? WIDTHS : []) {
    const page = await open(browser, server.base, width);
    await wholeJob({ page, server, width, test, sound });
    await beforeAndAfter({ page, server, width, test, sound });
    await page.context().close();
  }
  if (wanted(pairing)) await pairing({ browser, test });
  for (const scenario of [keyboardOnly, hailKilled, hailDay, offline, twoDevices, arrivalOfACar, badEntries, badUploads, draftsAndUndo, papers, sheets, pricing, theDay, liveSession, mirrorPage, phoneLens, metal, plan, behind, rehearse, gaugeDepth].filter(wanted)) {
    // Where the test itself answers some requests, the app's service worker must not ask in its place.
    const answers = [mirrorPage, liveSession].includes(scenario);
    const page = await open(browser, server.base, WIDTHS[2], answers ? { serviceWorkers: 'block' } : {});
    await scenario({ browser, page, server, test, sound });
    await page.context().close();
  }
} finally {
  await browser.close();
  await server.stop();
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
