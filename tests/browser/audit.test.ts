/** What holds for every screen: it fits each size, its first screen is small to fetch, and what other tests do not look at is accessible. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { drawWholePage } from './support/drawWholePage.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { type ScreenAddress, screenAddresses } from './support/screenAddresses.ts';

const SIZES = [
  { width: 1280, height: 800 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
];
/** Of the scripts that the first screen needs, compressed as hosts send them. */
const MOST_SCRIPT_BYTES = 250_000;

let browser: Browser;
let watched: WatchedPage;
let page: Page;
let screens: readonly ScreenAddress[];

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  const context = await browser.newContext({ reducedMotion: 'reduce' });
  watched = await openApp(context);
  page = watched.page;
  await page.getByRole('heading', { name: texts.workshop.empty.title }).waitFor();
});
afterAll(() => browser.close());

it('fetches less than 250 kB of scripts for its first screen', async () => {
  const base = inject('appUrl');
  const addresses = await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name));
  const scripts = addresses.filter((address) => address.startsWith(base) && address.endsWith('.js'));
  const sizes = scripts.map((address) => {
    const file = join(inject('appFolder'), address.slice(base.length));
    return gzipSync(readFileSync(file)).length;
  });
  // The page's own file and the screens'.
  expect(sizes.length).toBeGreaterThanOrEqual(2);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(MOST_SCRIPT_BYTES);
});

it('has its screens fetched with the page, and not when its first script runs', () => {
  const html = readFileSync(join(inject('appFolder'), 'index.html'), 'utf8');
  expect(html).toMatch(/<link rel="modulepreload"[^>]*href="\.\/assets\/showScreens-/);
  expect(html).toMatch(/<link rel="stylesheet"[^>]*href="\.\/assets\/showScreens-/);
});

/** Charts follow a change of size a moment later. */
const fits = () =>
  page
    .waitForFunction(() => document.documentElement.scrollWidth <= window.innerWidth, undefined, { timeout: 10_000 })
    .then(
      () => true,
      () => false,
    );
const heading = () => page.getByRole('heading', { level: 1 }).first().waitFor();

it('fits every screen of the demonstration into each size without scrolling sideways', async () => {
  screens = await screenAddresses(page);
  const tooWide: string[] = [];
  for (const { screen, address } of screens) {
    await page.goto(address);
    await heading();
    await drawWholePage(page);
    for (const size of SIZES) {
      await page.setViewportSize(size);
      if (!(await fits())) tooWide.push(`${screen} at ${size.width}`);
    }
  }
  expect(tooWide).toEqual([]);
});

it('shows how it measures, with pictures worked out here, and no fault of accessibility', async () => {
  const words = texts.method;
  const [widest] = SIZES;
  if (widest) await page.setViewportSize(widest);
  await page.goto(screens.find(({ screen }) => screen === 'how it measures')?.address ?? '');
  await page.getByRole('img', { name: words.note.summary('A4', 12) }).waitFor({ timeout: 60_000 });
  await page
    .getByRole('img', { name: /^The level of partial 1 falls and swings, 1\.9\d beats a second/ })
    .waitFor({ timeout: 60_000 });
  await page
    .getByRole('img', { name: /^Change of \d+ strings of an invented instrument/ })
    .waitFor({ timeout: 60_000 });
  await page.getByText(/^[1-9]\d* of 40 sounds measured$/).waitFor({ timeout: 60_000 });
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('finds no fault with the pages of a piano that is new', async () => {
  await page.goto(screens.find(({ screen }) => screen === 'new instrument')?.address ?? '');
  await page.getByLabel(texts.workshop.form.name, { exact: true }).fill('Practice room upright');
  await page.getByRole('button', { name: texts.common.save }).click();
  await page.getByText(texts.instrument.visits.firstSteps.begin).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  const address = page.url();
  for (const below of ['strings', 'stringing', 'hear', 'torque']) {
    await page.goto(`${address}/${below}`);
    await heading();
    expect(await accessibilityFaults(page), below).toEqual([]);
  }
  expect(watched.complaints).toEqual([]);
});
