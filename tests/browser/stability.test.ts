import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readCsvTable } from '../../src/files/csvTable.ts';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';

/** One visitor looks at the failing upright of the demonstration, takes its charts along, and asks what a fault would look like. */
const words = texts.stability;
let browser: Browser;
let watched: WatchedPage;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  watched = await openApp(await browser.newContext({ acceptDownloads: true }));
  page = watched.page;
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
});
afterAll(() => browser.close());

const section = (name: string) => page.getByRole('region', { name, exact: true });

async function saved(sectionName: string, format: 'svg' | 'png' | 'csv'): Promise<{ name: string; bytes: Buffer }> {
  const download = page.waitForEvent('download');
  const button = section(sectionName).getByRole('button', { name: texts.charts.saving.formats[format], exact: true });
  await button.first().click();
  const file = await download;
  return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
}

it('the instrument’s page says the verdict by itself and leads to what it rests on', async () => {
  await page.getByRole('link', { name: 'The school hall upright' }).click();
  await section(words.line.title).getByText(words.verdict.states['giving way']).waitFor({ timeout: 30_000 });
  await page.getByRole('link', { name: words.open }).click();
  const verdict = section(words.verdict.title);
  await verdict.getByText(`${words.verdict.states['giving way']}.`).waitFor({ timeout: 30_000 });
  expect(await verdict.textContent()).toMatch(/The notes C5 to B5 lost pitch by themselves/);
});

it('every part is there, with no complaint from the browser and no fault of accessibility', async () => {
  for (const { title } of [
    words.lifeLine,
    words.map,
    words.string,
    words.pins,
    words.span,
    words.humidity,
    words.forecast,
  ])
    await section(title).waitFor();
  // A chart is drawn when it comes near what is seen of the page.
  await section(words.forecast.title).scrollIntoViewIfNeeded();
  await section(words.forecast.title).locator('svg.recharts-surface').waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});

it('a list at the top leads to every part, and the keyboard goes on from there', async () => {
  const parts = page.getByRole('navigation', { name: texts.common.onThisPage });
  expect((await parts.getByRole('button').allTextContents()).slice(0, 3)).toEqual([
    words.verdict.title,
    words.lifeLine.title,
    words.map.title,
  ]);
  await parts.getByRole('button', { name: words.forecast.title }).press('Enter');
  const heading = page.getByRole('heading', { name: words.forecast.title });
  expect(await heading.evaluate((one) => one === document.activeElement)).toBe(true);
  expect((await heading.boundingBox())?.y).toBeLessThan(400);
});

it('a string is chosen on the map by keyboard and by pointer', async () => {
  const map = page.getByRole('slider', { name: words.map.label });
  const choice = section(words.string.title).getByLabel(words.string.choose, { exact: true });
  await map.focus();
  await page.keyboard.press('Home');
  expect(await choice.inputValue()).toBe('21 2');
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowRight');
  expect(await choice.inputValue()).toBe('34 2');
  const box = await map.boundingBox();
  await map.click({ position: { x: (box?.width ?? 0) - 6, y: 100 } });
  expect(await choice.inputValue()).toBe('105 2');
  expect(await map.getAttribute('aria-valuetext')).toMatch(/^A7,/);
});

it('a chart is saved as a drawing that stands alone, as a picture, and as numbers', async () => {
  const svg = await saved(words.map.title, 'svg');
  expect(svg.name).toMatch(/^stability-the-school-hall-upright-map-of-own-drift.*\.svg$/);
  const text = svg.bytes.toString('utf8');
  expect(text).toContain(words.map.chartTitle);
  expect(text).not.toMatch(/class=|var\(--/);
  const blank = await browser.newPage();
  const isWhole = await blank.evaluate(
    (source) => new DOMParser().parseFromString(source, 'image/svg+xml').querySelector('parsererror') === null,
    text,
  );
  await blank.close();
  expect(isWhole).toBe(true);
  const png = await saved(words.lifeLine.title, 'png');
  expect([...png.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
  expect(png.bytes.length).toBeGreaterThan(10_000);
  const csv = await saved(words.lifeLine.title, 'csv');
  const table = readCsvTable(csv.bytes.toString('utf8'), ['visit_date', 'rh_percent', 'as_found_cents']);
  expect(table.ok && table.rows.length).toBeGreaterThan(10);
});

it('another slip that matters is kept with the instrument', async () => {
  const threshold = page.getByLabel(words.verdict.threshold, { exact: true });
  await threshold.selectOption('2');
  // The field shows what the records hold, so it says so once it is written.
  await expect.poll(() => threshold.inputValue(), { timeout: 30_000 }).toBe('2');
  await page.reload();
  await threshold.waitFor({ timeout: 30_000 });
  expect(await threshold.inputValue()).toBe('2');
});

it('invented pianos answer what a fault would look like, and can be stopped', async () => {
  const trial = section(words.whatIf.title);
  await trial.getByText(words.whatIf.faults.zone).click();
  await trial.getByLabel(words.whatIf.visits).selectOption('1');
  await trial.getByRole('button', { name: words.whatIf.start }).click();
  await trial.getByRole('table').waitFor({ timeout: 30_000 });
  await trial.getByRole('button', { name: words.whatIf.stop }).click();
  await trial.getByRole('button', { name: words.whatIf.start }).waitFor();
  expect(await trial.getByRole('table').textContent()).toMatch(/of \d+/);
});

it('an instrument without readings says what to do next', async () => {
  await page.getByRole('link', { name: texts.common.productName }).click();
  await page.getByRole('link', { name: texts.workshop.add }).click();
  await page.getByLabel(texts.workshop.form.name).fill('Practice room upright');
  await page.getByRole('button', { name: texts.common.save }).click();
  await section(words.line.title).getByText(words.line.none).waitFor();
  await page.getByRole('link', { name: words.open }).click();
  await page.getByText(words.empty.noVisit).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});
