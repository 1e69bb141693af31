/** How long a page takes until it shows something and answers, told by the browser itself. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { PageTimes } from '../support/lighthouseScore.ts';

export type LoadedPage = PageTimes & {
  /** From the start of the load to the end of the last step over 50 ms that five quiet seconds follow; the first paint where there is none. */
  readonly interactiveMs: number;
  /** Of the page's own thread until then, in processor time: what a machine with nothing else to do would take at least. */
  readonly processorMs: number;
};

export type Conditions = {
  /** The processor does everything so many times slower. */
  readonly slowedTimes: number;
  /** A telephone's slow network (150 ms, 1.6 Mbit/s), as Lighthouse sets it (from memory); none where the files are at hand. */
  readonly hasSlowNetwork: boolean;
};

const LONG_STEP_MS = 50;
const QUIET_MS = 5000;
const LONGEST_WAIT_MS = 30_000;

type Told = {
  firstPaintMs: number;
  largestPaintMs: number;
  layoutShift: number;
  steps: { startMs: number; durationMs: number }[];
};

/** Watches from the page's first moment on; given to the page before anything of its own. */
function watchLoading(): void {
  const told: Told = { firstPaintMs: 0, largestPaintMs: 0, layoutShift: 0, steps: [] };
  Object.assign(window, { told });
  const watch = (type: string, onEntry: (entry: PerformanceEntry) => void) =>
    new PerformanceObserver((list) => list.getEntries().forEach(onEntry)).observe({ type, buffered: true });
  watch('paint', ({ name, startTime }) => {
    if (name === 'first-contentful-paint') told.firstPaintMs = startTime;
  });
  watch('largest-contentful-paint', ({ startTime }) => {
    told.largestPaintMs = startTime;
  });
  watch('layout-shift', (entry) => {
    told.layoutShift += (entry as PerformanceEntry & { value: number }).value;
  });
  watch('longtask', ({ startTime, duration }) => {
    told.steps.push({ startMs: startTime, durationMs: duration });
  });
}

/** A context whose pages are watched. */
export async function watchedContext(browser: Browser): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: { width: 412, height: 823 } });
  await context.addInitScript(watchLoading);
  return context;
}

/** Loads an address in a page of its own and waits until it has been quiet for five seconds. */
export async function timeLoading(
  context: BrowserContext,
  address: string,
  conditions: Conditions,
): Promise<LoadedPage> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: conditions.slowedTimes });
  if (conditions.hasSlowNetwork)
    await session.send('Network.emulateNetworkConditions', {
      offline: false,
      latency: 150,
      downloadThroughput: 1_600_000 / 8,
      uploadThroughput: 750_000 / 8,
    });
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.goto(address);
  await untilQuiet(page);
  const { metrics } = await session.send('Performance.getMetrics');
  const processorMs = 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  const told = await page.evaluate(() => (window as unknown as { told: Told }).told);
  await page.close();
  return { ...timesOf(told), processorMs };
}

async function untilQuiet(page: Page): Promise<void> {
  const isQuiet = (quietMs: number) => {
    const { firstPaintMs, steps } = (window as unknown as { told: Told }).told;
    const last = steps.at(-1);
    const busyUntil = Math.max(firstPaintMs, last ? last.startMs + last.durationMs : 0);
    return firstPaintMs > 0 && performance.now() - busyUntil > quietMs;
  };
  await page.waitForFunction(isQuiet, QUIET_MS, { timeout: LONGEST_WAIT_MS, polling: 250 }).catch(() => undefined);
}

function timesOf({ firstPaintMs, largestPaintMs, layoutShift, steps }: Told): Omit<LoadedPage, 'processorMs'> {
  const after = steps.filter(({ startMs, durationMs }) => startMs + durationMs > firstPaintMs);
  const last = after.at(-1);
  return {
    firstPaintMs,
    largestPaintMs,
    layoutShift,
    interactiveMs: last ? last.startMs + last.durationMs : firstPaintMs,
    blockedMs: after.reduce((sum, { durationMs }) => sum + durationMs - LONG_STEP_MS, 0),
  };
}
