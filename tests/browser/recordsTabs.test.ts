/** Two pages of the program at once, as when somebody opens a second tab in the middle of a visit. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { openApp } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginVisit } from './support/recordSurvey.ts';

const words = texts.common.otherPages;
let browser: Browser;
let context: BrowserContext;
let first: Page;
let second: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
});
afterAll(() => browser.close());
beforeEach(async () => {
  context = await browser.newContext();
  first = (await openApp(context)).page;
  second = await context.newPage();
});
afterEach(() => context.close());

/** The first page stands on the recording of a survey; gives its address. */
async function openRecording(): Promise<string> {
  await beginVisit(first);
  await first.getByRole('button', { name: texts.visit.start.action['as-found'] }).click();
  await first.getByRole('button', { name: texts.recording.start }).waitFor();
  return first.url();
}

const leaveRecording = () => first.getByRole('link', { name: texts.common.productName }).click();

it('shows in each page what the other wrote, and loses neither’s', async () => {
  await second.goto(inject('appUrl'));
  const write = async (page: Page, name: string) => {
    await page.getByRole('link', { name: texts.workshop.add }).click();
    await page.getByLabel(texts.workshop.form.name).fill(name);
    await page.getByRole('button', { name: texts.common.save }).click();
    await page.getByRole('heading', { level: 1, name }).waitFor();
    await page.getByRole('link', { name: texts.common.productName }).click();
  };
  await Promise.all([write(first, 'Hall grand'), write(second, 'Practice upright')]);
  for (const page of [first, second])
    for (const name of ['Hall grand', 'Practice upright'])
      await page.getByRole('list', { name: texts.workshop.instruments }).getByRole('link', { name }).waitFor();
});

it('lets one page at a time record into a survey, and the other go on afterwards', async () => {
  await second.goto(await openRecording());
  await second.getByText(words.surveyTaken).waitFor();
  expect(await second.getByRole('button', { name: texts.recording.start }).count()).toBe(0);
  await leaveRecording();
  await second.getByRole('button', { name: texts.recording.start }).waitFor();
});

it('keeps the records for a page in the middle of a survey until it is done; then it says who took over', async () => {
  await openRecording();
  await second.goto(`${inject('appUrl')}stillpin.webmanifest`); // a page of the same origin that opens nothing by itself
  const opening = second.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const events: string[] = [];
        const request = indexedDB.open('stillpin', 500);
        request.onblocked = () => events.push('blocked');
        request.onsuccess = () => resolve([...events, 'open']);
        request.onerror = () => reject(request.error);
      }),
  );
  await second.waitForTimeout(500);
  expect(await first.getByRole('heading', { name: words.closedTitle }).count()).toBe(0);
  await leaveRecording();
  expect(await opening).toEqual(['blocked', 'open']);
  await first.getByRole('heading', { name: words.closedTitle }).waitFor();
});
