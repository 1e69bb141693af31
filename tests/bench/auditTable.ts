/** Table 13: how fast the screens are there on a slow machine, and what an automatic check says of their accessibility. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { chromiumHere } from '../browser/support/findChromium.ts';
import { launchChromium } from '../browser/support/launchChromium.ts';
import { screenAddresses } from '../browser/support/screenAddresses.ts';
import { serveFolder } from '../browser/support/serveFolder.ts';
import { performanceScore } from '../support/lighthouseScore.ts';
import type { Bench } from './bench.ts';
import { buildApp } from './buildApp.ts';
import { type Conditions, type LoadedPage, timeLoading, watchedContext } from './pageTimes.ts';

const SLOWED: Conditions = { slowedTimes: 4, hasSlowNetwork: false };
const TELEPHONE: Conditions = { slowedTimes: 4, hasSlowNetwork: true };
const LEAST_SCORE = 95;
const FIRST_SCREEN_MS = 1500;

/** Empty: all screens. Else only these, as in `AUDIT_SCREENS=survey,torque npm run bench -- audit`. */
const WANTED = (process.env.AUDIT_SCREENS ?? '').split(',').filter((name) => name !== '');
const isWanted = (screen: string) => WANTED.length === 0 || WANTED.includes(screen);

type Audited = { readonly screen: string; readonly times: LoadedPage; readonly accessibility: number };

export async function auditTable(bench: Bench): Promise<void> {
  const { report } = bench;
  report.heading('13  Audit of the built program: processor slowed four times; accessibility');
  const executablePath = chromiumHere();
  if (executablePath === undefined) {
    report.remark('Left out: no Chromium was found. Install one, or set CHROME_PATH to its program file.');
    return;
  }
  const server = await serveFolder(await buildApp(bench.folder), {}, true);
  const browser = await launchChromium(executablePath, { kind: 'none' });
  try {
    const first = await auditFirst(browser, server.url, SLOWED, 'first visit, empty workshop');
    const telephone = await auditFirst(browser, server.url, TELEPHONE, 'the same over a slow network');
    print(bench, [...first, ...telephone, ...(await auditDemonstration(bench, browser, server.url))]);
    for (const { times } of first)
      report.limit({
        what: 'first screen interactive',
        measured: times.interactiveMs,
        unit: 'ms',
        atMost: FIRST_SCREEN_MS,
      });
  } finally {
    await browser.close();
    await server.close();
  }
}

async function auditFirst(browser: Browser, url: string, conditions: Conditions, screen: string): Promise<Audited[]> {
  if (!isWanted(screen)) return [];
  const context = await watchedContext(browser);
  const times = await timeLoading(context, url, conditions);
  const page = await context.newPage();
  await page.goto(url);
  const accessibility = await accessibilityScore(page);
  await context.close();
  return [{ screen, times, accessibility }];
}

/** Every screen of the demonstration, loaded by its own address. */
async function auditDemonstration({ size, progress }: Bench, browser: Browser, url: string): Promise<Audited[]> {
  const context: BrowserContext = await watchedContext(browser);
  const page = await context.newPage();
  await page.goto(url);
  const screens = (await screenAddresses(page)).filter(({ screen }) => isWanted(screen));
  const audited: Audited[] = [];
  for (const { screen, address } of size === 'quick' ? screens.slice(0, 4) : screens) {
    progress(`audit: ${screen}`);
    const times = await timeLoading(context, address, SLOWED);
    await page.goto(address);
    await page.waitForTimeout(2000);
    audited.push({ screen, times, accessibility: await accessibilityScore(page) });
  }
  await context.close();
  return audited;
}

/** Share of the rules that apply to the page and hold, from 0 to 100, each rule alike. */
async function accessibilityScore(page: Page): Promise<number> {
  const { passes, violations } = await new AxeBuilder({ page }).analyze();
  return (100 * passes.length) / (passes.length + violations.length);
}

function print({ report }: Bench, audited: readonly Audited[]): void {
  report.table(
    [
      'screen',
      'first paint, ms',
      'largest paint',
      'interactive',
      'processor',
      'blocked',
      'layout shift',
      'performance',
      'accessibility',
    ],
    audited.map(({ screen, times, accessibility }) => [
      screen,
      ...[times.firstPaintMs, times.largestPaintMs, times.interactiveMs, times.processorMs, times.blockedMs].map((ms) =>
        ms.toFixed(0),
      ),
      times.layoutShift.toFixed(3),
      performanceScore(times).toFixed(0),
      accessibility.toFixed(0),
    ]),
  );
  report.remark(
    'Processor: time of the page’s own thread alone; where other programs use the processors too, everything else takes longer.\n' +
      'Performance: the published scoring of Lighthouse 10 and later without its speed index; its control points are from memory.\n' +
      'Accessibility: share of axe-core’s rules that hold among those that apply, each alike; Lighthouse weighs them.\n' +
      'Screens of the demonstration are loaded from the program’s own store, as at any visit after the first.',
  );
  const least = (of: (one: Audited) => number) => Math.min(...audited.map(of));
  report.limit({
    what: 'audit: performance, least of all screens',
    measured: least(({ times }) => performanceScore(times)),
    unit: '',
    atLeast: LEAST_SCORE,
  });
  report.limit({
    what: 'audit: accessibility, least of all screens',
    measured: least(({ accessibility }) => accessibility),
    unit: '',
    atLeast: LEAST_SCORE,
  });
}
