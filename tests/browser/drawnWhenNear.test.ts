/** Long pages: what is far from sight is drawn when it comes near, and all of it for paper. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { screenAddresses } from './support/screenAddresses.ts';

let browser: Browser;
let watched: WatchedPage;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  watched = await openApp(await browser.newContext({ viewport: { width: 412, height: 823 } }));
  page = watched.page;
  const screens = await screenAddresses(page);
  await page.goto(screens.find(({ screen }) => screen === 'survey')?.address ?? '');
  await figure().waitFor();
});
afterAll(() => browser.close());

const region = (name: string) => page.getByRole('region', { name, exact: true });
const figure = () => region(texts.charts.life.title).locator('figure');
const rows = () => page.getByRole('table', { name: texts.visit.survey.caption }).locator('tbody tr').count();

it('makes all rows of a long table by itself', async () => {
  await expect.poll(rows, { timeout: 10_000 }).toBe(85);
});

it('draws a chart when it comes near, in the place that was kept for it', async () => {
  const chart = region(texts.charts.inharmonicity.title).locator('figure');
  expect(await chart.getByRole('img').getAttribute('aria-label')).toContain('84');
  expect(await chart.locator('svg.recharts-surface').count()).toBe(0);
  const before = await chart.boundingBox();
  await chart.scrollIntoViewIfNeeded();
  await chart.locator('svg.recharts-surface').waitFor();
  expect((await chart.boundingBox())?.height).toBeCloseTo(before?.height ?? 0, 0);
});

it('prints charts that nobody has seen yet', async () => {
  await page.reload();
  await figure().waitFor();
  await expect.poll(isLibraryThere, { timeout: 30_000 }).toBe(true);
  await page.evaluate(() => {
    window.addEventListener('beforeprint', () => {
      document.body.dataset.drawnCount = String(document.querySelectorAll('svg.recharts-surface').length);
    });
  });
  expect(await page.locator('svg.recharts-surface').count()).toBe(0);
  await page.pdf({ format: 'A4' });
  expect(await page.locator('body').getAttribute('data-drawn-count')).toBe('2');
  expect(watched.complaints).toEqual([]);
});

const isLibraryThere = () =>
  page.evaluate(() => performance.getEntriesByType('resource').some(({ name }) => name.includes('NotesChart')));
