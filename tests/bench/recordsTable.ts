/** Table 11: a large workshop's records in a browser: bringing them in, opening, an instrument's page, writing them out. */
import { openAsBlob, openSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { fileSpools } from '../../src/cli/archive/fileSpool.ts';
import { NODE_BYTE_WORK } from '../../src/cli/archive/nodeByteWork.ts';
import { openArchive } from '../../src/files/archive/readArchive.ts';
import { writeArchive } from '../../src/files/archive/writeArchive.ts';
import { texts } from '../../src/ui/texts.ts';
import { chromiumHere } from '../browser/support/findChromium.ts';
import { launchOnDisk } from '../browser/support/launchChromium.ts';
import { serveFolder } from '../browser/support/serveFolder.ts';
import { benchWorkshop } from './archiveRecords.ts';
import { type Bench, sized } from './bench.ts';
import { buildApp } from './buildApp.ts';
import { choosePeerFile, putPlainly, takePlainly, writePeerFile } from './plainPeer.ts';
import { figure } from './report.ts';

const VISITS = 20;
const words = texts.records;

type Step = {
  readonly what: string;
  readonly wallS: number;
  /** Of the page's own thread: what is left of the time when nothing else runs on the machine. */
  readonly threadS: number;
  /** Of all threads of the page's process: with the worker that packs and reckons, and the clearing of memory. */
  readonly processS: number;
  readonly heapMb: number;
};

export async function recordsTable(bench: Bench, instrumentCount = sized(bench, 3, 300)): Promise<void> {
  const { report, folder } = bench;
  const chromiumPath = chromiumHere();
  if (chromiumPath === undefined) {
    report.remark('Left out: no Chromium was found. Install one, or set CHROME_PATH to its program file.');
    return;
  }
  const workshop = benchWorkshop(instrumentCount, VISITS);
  const file = join(folder, 'workshop.zip');
  const unpackedMb = await writeToFile(file, workshop.contents);
  const peerFile = join(folder, 'peer');
  const peerMb = (await writePeerFile(file, peerFile)) / 1e6;
  const server = await serveFolder(await buildApp(folder));
  const browser = await launchOnDisk(chromiumPath, join(folder, 'profile'));
  try {
    const page = await browser.newPage();
    const watch = await watchPage(page);
    const step = async (what: string, work: () => Promise<unknown>): Promise<Step> => {
      bench.progress(what);
      return watch(what, work);
    };
    await page.goto(`${server.url}#/records`);
    await choosePeerFile(page, peerFile);
    const plain = [await step(PUT_PLAINLY, () => putPlainly(page)), await step(TAKEN_PLAINLY, () => takePlainly(page))];
    const steps = [
      await step('looked at', () => look(page, file)),
      await step('brought in', () => bringIn(page)),
      await step('workshop opened', () => openWorkshop(page, server.url)),
      await step('instrument’s visits', () => openInstrument(page)),
      await step('instrument’s changes', () => changesDrawn(page)),
      await step('written out', () => writeOut(page, server.url)),
    ];
    report.heading(
      `11  Records of ${instrumentCount} instruments, ${VISITS} visits each, in a browser, on its disk: ${workshop.takeCount} readings, ` +
        `${workshop.partialCount} partials, ${unpackedMb.toFixed(0)} MB of tables in ${(statSync(file).size / 1e6).toFixed(0)} MB`,
    );
    print(bench, steps, unpackedMb);
    printPlain(bench, plain, peerMb);
  } finally {
    await browser.close();
    await server.close();
  }
}

const OF_ALL_TABLES = ['looked at', 'brought in', 'written out'];

function print({ report }: Bench, steps: readonly Step[], unpackedMb: number): void {
  report.table(
    ['', 'time, s', 'MB/s', 'page’s thread, s', 'MB/s', 'page’s process, s', 'MB/s', 'memory then, MB'],
    steps.map(({ what, wallS, threadS, processS, heapMb }) => {
      const rate = (seconds: number) => (OF_ALL_TABLES.includes(what) ? figure(unpackedMb / seconds) : '');
      const times = [wallS, threadS, processS].flatMap((seconds) => [figure(seconds), rate(seconds)]);
      return [what, ...times, heapMb.toFixed(0)];
    }),
  );
  const threadOf = (what: string) => steps.find((step) => step.what === what)?.threadS;
  report.limit({ what: 'workshop opened', measured: threadOf('workshop opened'), unit: 's', atMost: 2 });
  report.limit({
    what: 'instrument’s visits shown',
    measured: threadOf('instrument’s visits'),
    unit: 's',
    atMost: 0.5,
  });
  for (const what of ['brought in', 'written out']) {
    const threadS = threadOf(what);
    const measured = threadS === undefined ? undefined : unpackedMb / threadS;
    report.limit({ what: `records ${what}, tables by time of the page’s thread`, measured, unit: 'MB/s', atLeast: 20 });
  }
}

const PUT_PLAINLY = 'unpacked and put';
const TAKEN_PLAINLY = 'read and packed';

function printPlain({ report }: Bench, steps: readonly Step[], mb: number): void {
  report.remark(`For comparison, ${mb.toFixed(0)} MB of the largest table without a look at them, a megabyte a row:`);
  report.table(
    ['', 'time, s', 'MB/s', 'page’s thread, s', 'MB/s', 'page’s process, s', 'MB/s'],
    steps.map(({ what, wallS, threadS, processS }) => [
      what,
      ...[wallS, threadS, processS].flatMap((seconds) => [figure(seconds), figure(mb / seconds)]),
    ]),
  );
}

async function writeToFile(path: string, contents: Parameters<typeof writeArchive>[0]): Promise<number> {
  const descriptor = openSync(path, 'w');
  const options = {
    createdAt: '2026-01-02T03:04:05Z',
    programVersion: 'bench',
    byteWork: NODE_BYTE_WORK,
    createSpool: fileSpools(path),
  };
  await writeArchive(contents, options, (bytes) => void writeSync(descriptor, bytes));
  const blob = await openAsBlob(path);
  const read = async (offset: number, length: number) =>
    new Uint8Array(await blob.slice(offset, offset + length).arrayBuffer());
  const outcome = await openArchive({ byteCount: blob.size, read });
  if (!outcome.opened) throw outcome.fault;
  return outcome.archive.unpackedBytes / 1e6;
}

type Watch = (what: string, work: () => Promise<unknown>) => Promise<Step>;

async function watchPage(page: Page): Promise<Watch> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async (what, work) => {
    const before = await metrics(session);
    const startedAt = performance.now();
    await work();
    const wallS = (performance.now() - startedAt) / 1000;
    const after = await metrics(session);
    // Another page may have another process, whose count begins anew.
    const since = (key: 'threadS' | 'processS') => (after[key] < before[key] ? after[key] : after[key] - before[key]);
    return { what, wallS, threadS: since('threadS'), processS: since('processS'), heapMb: after.heapMb };
  };
}

type Metrics = { readonly threadS: number; readonly processS: number; readonly heapMb: number };

async function metrics(session: CDPSession): Promise<Metrics> {
  const { metrics: all } = await session.send('Performance.getMetrics');
  const figureOf = (name: string) => all.find((metric) => metric.name === name)?.value ?? Number.NaN;
  return {
    threadS: figureOf('ThreadTime'),
    processS: figureOf('ProcessTime'),
    heapMb: figureOf('JSHeapUsedSize') / 1e6,
  };
}

const PATIENT = { timeout: 3_600_000 };

async function look(page: Page, file: string): Promise<void> {
  await page.getByLabel(words.import.choose).setInputFiles(file);
  await page.getByRole('button', { name: words.import.bringIn }).waitFor(PATIENT);
}

async function bringIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: words.import.bringIn }).click();
  const done = page.getByText(/^Brought in: /);
  const failed = page.getByText(words.import.failed('').trim());
  await done.or(failed).waitFor(PATIENT);
  if (await failed.isVisible()) throw new Error((await failed.textContent()) ?? '');
}

async function openWorkshop(page: Page, appUrl: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${appUrl}#/`);
  await page.getByRole('list', { name: texts.workshop.instruments }).waitFor(PATIENT);
}

async function openInstrument(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Instrument 2', exact: true }).click();
  await page.getByRole('table', { name: texts.instrument.visits.caption }).waitFor(PATIENT);
}

/** Every take of the instrument has been read and compared. */
async function changesDrawn(page: Page): Promise<void> {
  await page
    .getByText('…', { exact: true })
    .first()
    .waitFor({ ...PATIENT, state: 'hidden' });
}

async function writeOut(page: Page, appUrl: string): Promise<void> {
  await page.goto(`${appUrl}#/records`);
  const downloading = page.waitForEvent('download', PATIENT);
  await page.getByRole('button', { name: words.backup.download }).click();
  await (await downloading).cancel();
}
