// Finds and starts the browser, and the checks that hold on every page.
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

export const FLAGS = ['--headless', '--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
/** WebGL computed on the processor. */
const WEBGL = ['--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
/** No graphics card at all: pictures are drawn on the processor directly, which a stream of large ones needs. */
const NO_GPU = ['--disable-gpu'];
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'chrome'];

export const WIDTHS = [
  { name: '390', width: 390, height: 844, touch: true },
  { name: '820', width: 820, height: 1180, touch: true },
  { name: '1440', width: 1440, height: 900, touch: false },
];

/** Path of a Chromium: `CHROMIUM`, else the first one in PATH. */
export function findBrowser() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const found = folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find((path) => existsSync(path));
  if (!found) throw new Error('no Chromium found: install one (Debian: apt-get install chromium) or set CHROMIUM to its path');
  return found;
}

export const start = ({ webgl = true } = {}) => chromium.launch({ executablePath: findBrowser(), args: [...FLAGS, ...(webgl ? WEBGL : NO_GPU)] });

/** A page of one width; anything that the page itself reports as an error is collected. */
/** `more` goes to the browser's context. */
export async function open(browser, base, { width, height, touch }, more = {}) {
  const context = await browser.newContext({ viewport: { width, height }, hasTouch: touch, isMobile: touch, acceptDownloads: true, baseURL: base, reducedMotion: 'reduce', ...more });
  const page = await context.newPage();
  page.troubles = [];
  page.asked = new Map();
  page.on('request', (request) => page.asked.set(request.url(), (page.asked.get(request.url()) ?? 0) + 1));
  page.on('pageerror', (error) => page.troubles.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && !/Failed to load resource/.test(message.text()) && page.troubles.push(message.text()));
  return page;
}

/** Everything one can touch that is smaller than 44 px, as text. Panels of the drawn car are also in a list. */
export function smallTargets(page) {
  return page.evaluate(() => {
    const found = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [role=button], [role=link], [role=application]')];
    const panels = (element) => element.closest('svg[role=group]') && element.dataset.panel;
    return found
      .filter((element) => !panels(element) && !element.closest('.skip'))
      .filter((element) => element.checkVisibility() && !element.matches(':disabled'))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
      .map(({ element, box }) => `${element.outerHTML.slice(0, 90)} is ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`);
  });
}

/** How many pixels the page is wider than the screen. */
export function overflow(page) {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

const axeSource = readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Serious and critical findings of axe-core, as text. */
export async function axe(page) {
  await page.evaluate(await axeSource);
  const violations = await page.evaluate(async () => (await window.axe.run(document, { resultTypes: ['violations'] })).violations);
  return violations
    .filter((one) => ['serious', 'critical'].includes(one.impact))
    .flatMap((one) => one.nodes.map((node) => `${one.id}: ${node.html.slice(0, 120)} ${node.failureSummary?.split('\n')[1] ?? ''}`));
}
