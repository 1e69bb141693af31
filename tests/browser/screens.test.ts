import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { drawWholePage } from './support/drawWholePage.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';

/** One visitor goes from an empty record through the demonstration workshop; every screen on the way is looked at. */
let browser: Browser;
let context: BrowserContext;
let watched: WatchedPage;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  context = await browser.newContext();
  watched = await openApp(context);
  page = watched.page;
});
afterAll(() => browser.close());

const heading = (name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();
const table = (name: string) => page.getByRole('table', { name });
const linksIn = (name: string) => table(name).getByRole('link');

/** Each step stands on the one before and ends on the screen that it names. */
const STEPS: readonly [screen: string, go: () => Promise<void>][] = [
  ['the empty workshop', () => heading(texts.workshop.empty.title)],
  [
    'the demonstration workshop',
    async () => {
      await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
      await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
      await heading(texts.workshop.title);
    },
  ],
  [
    'an instrument with years of visits',
    async () => {
      await page.getByRole('list', { name: texts.workshop.instruments }).getByRole('link').first().click();
      await table(texts.instrument.visits.caption).waitFor();
      await page.getByRole('heading', { name: texts.instrument.change.title }).waitFor();
    },
  ],
  [
    'a visit',
    async () => {
      await linksIn(texts.instrument.visits.caption).first().click();
      await table(texts.visit.surveys.caption).waitFor();
    },
  ],
  [
    'a survey',
    async () => {
      await linksIn(texts.visit.surveys.caption).first().click();
      await table(texts.visit.survey.caption).waitFor();
      for (const { title } of [texts.charts.inharmonicity, texts.charts.life])
        await page.getByRole('region', { name: title, exact: true }).locator('figure').waitFor();
    },
  ],
  [
    'a take',
    async () => {
      await linksIn(texts.visit.survey.caption).first().click();
      await table(texts.take.partialsCaption).waitFor();
    },
  ],
  [
    'the torque of an instrument’s pins beside what its strings lost',
    async () => {
      await page.getByRole('link', { name: texts.common.productName }).click();
      await page.getByRole('link', { name: 'The school hall upright' }).click();
      await page.getByRole('link', { name: texts.torque.open }).click();
      await page.getByRole('img', { name: /^Slip of \d+ strings against the torque/ }).waitFor();
    },
  ],
  [
    'what held across instruments, stopped while it looks back',
    async () => {
      await page.getByRole('link', { name: texts.common.productName }).click();
      await page.getByRole('link', { name: texts.held.link }).click();
      await page.getByRole('button', { name: texts.held.progress.stop }).click();
      await page.getByText(texts.held.progress.stopped).waitFor();
    },
  ],
  [
    'the form for an instrument',
    async () => {
      await page.getByRole('link', { name: texts.common.productName }).click();
      await page.getByRole('link', { name: texts.workshop.add }).click();
      await heading(texts.workshop.form.newTitle);
    },
  ],
  [
    'the form, sent with nothing in it',
    async () => {
      await page.getByRole('button', { name: texts.common.save }).click();
      await page.getByText(texts.workshop.form.faults['name-missing']).first().waitFor();
    },
  ],
  [
    'an instrument without visits',
    async () => {
      await page.getByLabel(texts.workshop.form.name).fill('Practice room upright');
      await page.getByRole('button', { name: texts.common.save }).click();
      await heading('Practice room upright');
    },
  ],
  [
    'the form for a visit',
    async () => {
      await page.getByRole('link', { name: texts.instrument.newVisit }).click();
      await heading(texts.visit.form.newTitle);
    },
  ],
  [
    'a visit without surveys',
    async () => {
      await page.getByLabel(texts.visit.form.humidity).fill('43');
      await page.getByRole('button', { name: texts.visit.form.saveAndGo }).click();
      await page.getByRole('button', { name: texts.visit.start.action['as-found'] }).waitFor();
    },
  ],
  [
    'the recording of a survey, before the first note',
    async () => {
      await page.getByRole('button', { name: texts.visit.start.action['as-found'] }).click();
      await page.getByRole('button', { name: texts.recording.start }).waitFor();
    },
  ],
  [
    'the recording where there is no microphone',
    async () => {
      await page.getByRole('button', { name: texts.recording.start }).click();
      await page.getByText(texts.recording.faults['no-microphone']).first().waitFor();
    },
  ],
  [
    'an address where nothing stands',
    async () => {
      await page.evaluate(() => {
        location.hash = '#/nowhere';
      });
      await heading(texts.common.gone.title);
    },
  ],
];

it.each(STEPS)('shows %s with no complaint from the browser and no fault of accessibility', async (_, go) => {
  await go();
  await drawWholePage(page);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});
