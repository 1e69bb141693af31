import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { englishReportWords } from '../../src/report/words.ts';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { pdfPages } from './support/pdfPages.ts';

/** Evidence of the invented hall upright, whose strings C5 to B5 give way: printed, saved, heard. */
let browser: Browser;
let context: BrowserContext;
let watched: WatchedPage;
let page: Page;
let instrumentUrl: string;
let folder: string;

const { advice, course, falseBeats, verdict, work } = englishReportWords;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
  browser = await openBrowser({ kind: 'none' });
  context = await browser.newContext();
  watched = await openApp(context);
  page = watched.page;
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  await page.getByRole('link', { name: 'The school hall upright' }).click();
  await page.getByRole('link', { name: texts.report.link }).waitFor();
  instrumentUrl = page.url();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function open(link: string): Promise<void> {
  await page.goto(instrumentUrl);
  await page.getByRole('link', { name: link }).click();
}

async function saved(button: string): Promise<Download> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return download;
}

/** A saved file in a browser of its own that is not let into any network. */
async function openedFile(download: Download): Promise<{ file: Page; requests: string[] }> {
  const alone = await browser.newContext({ offline: true });
  const file = await alone.newPage();
  const requests: string[] = [];
  file.on('request', (request) => requests.push(request.url()));
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  await file.goto(pathToFileURL(path).href);
  return { file, requests: requests.filter((address) => !address.startsWith('file:') && !address.startsWith('data:')) };
}

it('shows the owner’s page without a fault, with the verdict and a chart that has words for those who do not see it', async () => {
  await open(texts.report.link);
  await page.getByRole('heading', { name: verdict.title }).waitFor();
  await page.getByText(verdict.titles['giving way']).waitFor();
  await page.getByRole('img', { name: /^Chart of 13 comparisons/ }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});

// 1 pt is 1/72 in: A4 is 210 × 297 mm (ISO 216), US Letter 8.5 × 11 in.
it.each([
  ['A4', 594.96, 841.92],
  ['Letter', 612, 792],
] as const)('prints the page on %s, nothing of the program around it', async (format, widthPt, heightPt) => {
  const pages = await pdfPages(await page.pdf({ format }));
  const all = pages.map(({ text }) => text).join(' ');
  expect(pages).toHaveLength(1);
  for (const one of pages) {
    expect(Math.abs(one.widthPt - widthPt)).toBeLessThan(1);
    expect(Math.abs(one.heightPt - heightPt)).toBeLessThan(1);
  }
  expect(pages[0]?.text).toContain('The school hall upright');
  for (const title of [verdict.titles['giving way'], course.title, advice.title, falseBeats.title, work.title])
    expect(pages[0]?.text).toContain(title);
  expect(all).toMatch(/The strings from C5 to B5 go flat by themselves, about \d\.\d cents a year/);
  expect(all).toContain(englishReportWords.method.made);
  expect(all).toContain(`${pages.length} / ${pages.length}`);
  for (const outside of [texts.report.print, texts.report.choice.remark, texts.common.productName.concat(' Records')])
    expect(all).not.toContain(outside);
});

it('keeps a page break out of chart and verdict where a long remark takes a second page', async () => {
  const remark = page.getByLabel(texts.report.choice.remark);
  await remark.fill('Pins tapped and read again.\n'.repeat(70).trim());
  const pages = await pdfPages(await page.pdf({ format: 'A4' }));
  expect(pages.length).toBeGreaterThan(1);
  expect(pages.filter(({ text }) => text.includes(course.humidityTitle))).toHaveLength(1);
  const verdictPage = pages.find(({ text }) => text.includes(verdict.title));
  expect(verdictPage?.text).toContain('This rests on 13 comparisons');
  expect(pages.at(-1)?.text).toContain(englishReportWords.method.title);
  await remark.fill('');
});

it('leaves out what is not wanted, and remembers it on this device', async () => {
  await page.getByLabel(texts.report.choice.sections['false-beats']).uncheck();
  await page.getByRole('heading', { name: falseBeats.title }).waitFor({ state: 'detached' });
  await page.reload();
  await page.getByRole('heading', { name: advice.title }).waitFor();
  expect(await page.getByRole('heading', { name: falseBeats.title }).count()).toBe(0);
  await page.getByLabel(texts.report.choice.sections['false-beats']).check();
  await page.getByRole('heading', { name: falseBeats.title }).waitFor();
});

it('saves the page as a file that opens and prints without any network', async () => {
  const download = await saved(texts.report.save);
  expect(download.suggestedFilename()).toBe('the-school-hall-upright-owner-s-page.html');
  const { file, requests } = await openedFile(download);
  await file.getByText(verdict.titles['giving way']).waitFor();
  const pages = await pdfPages(await file.pdf({ format: 'A4' }));
  expect(pages[0]?.text).toContain(course.title);
  expect(requests).toEqual([]);
  await file.context().close();
});

it('shows the long record, and gives its readings as CSV', async () => {
  await open(texts.longRecord.link);
  await page.getByRole('heading', { name: englishReportWords.long.visits, exact: true }).waitFor();
  // All but the thousands of cells.
  const { violations } = await new AxeBuilder({ page }).exclude({ fromShadowDom: ['main > div', 'tbody'] }).analyze();
  expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')).toEqual([]);
  const readings = await readFile(await (await saved(texts.longRecord.saveReadings)).path(), 'utf8');
  const lines = readings.trimEnd().split('\r\n');
  // 14 visits, as found and as left, 85 notes, and the header.
  expect(lines).toHaveLength(14 * 2 * 85 + 1);
  expect(lines[0]).toMatch(/^visit_date,stage,rh_percent,temp_c,note,string,cents,cents_u,/);
  expect(watched.complaints).toEqual([]);
});

it('plays a note at two visits and shows where it is', async () => {
  await open(texts.hearing.link);
  await page.getByRole('img', { name: /^Loudness of partial/ }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.getByRole('button', { name: texts.hearing.playBoth }).click();
  await page.getByText(/^Playing: 5 October 2020, as left$/).waitFor();
  await page.getByText(/^Playing: 22 July 2026, as found$/).waitFor();
  await page.getByRole('button', { name: texts.hearing.playBoth }).waitFor();
  expect(watched.complaints).toEqual([]);
});

it('saves the two sounds as a file that plays one after the other without any network', async () => {
  const { file, requests } = await openedFile(await saved(texts.hearing.save));
  await file.getByRole('button', { name: englishReportWords.hearing.playBoth }).click();
  const playing = (index: number) =>
    file.waitForFunction((at) => !document.querySelectorAll('audio')[at]?.paused, index);
  await playing(0);
  await playing(1);
  expect(
    await file.evaluate(() => [...document.querySelectorAll('audio')].map(({ duration }) => Math.round(10 * duration))),
  ).toEqual([27, 27]);
  expect(requests).toEqual([]);
  await file.context().close();
});
