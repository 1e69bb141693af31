/** The browser killed in the middle of something, and what is there afterwards. Each run has a profile of its own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { formatNote } from '../../../src/piano/format.ts';
import { texts } from '../../../src/ui/texts.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { type ArchiveFile, archiveOfInstruments } from './archiveOfInstruments.ts';
import { chooseFile, openKillable } from './killableBrowser.ts';
import { fillVersion3 } from './oldDatabase.ts';
import { beginVisit } from './recordSurvey.ts';
import { storedRows } from './storedRows.ts';

export type FaultPlace = {
  readonly chromiumPath: string;
  readonly appUrl: string;
  /** A recording of many notes, lowest first. */
  readonly surveyFile: string;
};

export type FaultRun = {
  /** What had happened when the browser was killed, in words. */
  readonly when: string;
  /** What the screen had called kept, or what was in the records before. */
  readonly promisedCount: number;
  /** Of that, what was not there afterwards; and whatever else was not as it should be. */
  readonly faults: readonly string[];
};

/** Counted from the project's folder, since the bench is bundled elsewhere. */
export const SURVEY_FILE = join(process.cwd(), 'sample-audio', 'survey-88-notes.wav');
const LOWEST_MIDI = 21;

/** While a recording of a survey is read, at a random moment after a random note. */
export function killedSurvey(place: FaultPlace, seed: number): Promise<FaultRun> {
  const random = seededRandom(seed);
  const afterNotes = 1 + Math.floor(random.uniform() * 30);
  const delayMs = random.uniform() * 250;
  return inProfile(place, async (open) => {
    const first = await open();
    await first.page.goto(place.appUrl);
    await beginVisit(first.page);
    await chooseFile(first.page, texts.recordings.title, place.surveyFile);
    let promised: number[] = [];
    for (const endsAt = Date.now() + 240_000; promised.length < afterNotes && Date.now() < endsAt; )
      promised = await notesCalledKept(first.page);
    await first.page.waitForTimeout(delayMs);
    promised = await notesCalledKept(first.page);
    await first.kill();
    const second = await open();
    const faults = await faultsOfOpening(second.page, place.appUrl);
    const rows = await storedRows(second.page, 'takes', ['midi', 'keptFlag']);
    const kept = new Set(rows.filter(({ keptFlag }) => keptFlag === 1).map(({ midi }) => midi));
    const missing = promised.filter((midi) => !kept.has(midi)).map((midi) => `${formatNote(midi)} is missing`);
    await second.kill();
    return { when: `${promised.length} notes kept`, promisedCount: promised.length, faults: [...faults, ...missing] };
  });
}

/** While an archive is brought in, at a random moment; then it is brought in again. */
export function killedImport(place: FaultPlace, seed: number): Promise<FaultRun> {
  const random = seededRandom(seed);
  const delayMs = random.uniform() * 1200;
  return inProfile(place, async (open, folder) => {
    const archive = await archiveOfInstruments(join(folder, 'archive.zip'), 6);
    const first = await open();
    await lookAt(first.page, place.appUrl, archive);
    await first.page.getByRole('button', { name: texts.records.import.bringIn }).click();
    await first.page.waitForTimeout(delayMs);
    await first.kill();
    const second = await open();
    const faults = await faultsOfOpening(second.page, place.appUrl);
    const { wholeCount, halves } = await broughtIn(second.page, archive);
    const untold =
      wholeCount > 0 && wholeCount < archive.instruments.length ? await faultsOfTelling(second.page, place.appUrl) : [];
    await lookAt(second.page, place.appUrl, archive);
    const again = second.page.getByRole('button', { name: texts.records.import.bringIn });
    if (wholeCount < archive.instruments.length || (await again.count()) > 0) {
      await again.click();
      await second.page.getByText(/^Brought in: /).waitFor();
    }
    const end = await broughtIn(second.page, archive);
    await second.kill();
    const missing = end.wholeCount < archive.instruments.length ? ['the second time did not bring the rest'] : [];
    const when = `${wholeCount} of ${archive.instruments.length} instruments in`;
    return { when, promisedCount: archive.takeCount, faults: [...faults, ...halves, ...untold, ...missing] };
  });
}

/** While a database of version 3 is brought to today's, at a random moment. */
export function killedMigration(place: FaultPlace, seed: number): Promise<FaultRun> {
  const random = seededRandom(seed);
  const delayMs = random.uniform() * 600;
  const takeCount = 4000;
  return inProfile(place, async (open) => {
    const first = await open();
    await first.page.goto(`${place.appUrl}stillpin.webmanifest`);
    await fillVersion3(first.page, takeCount);
    await first.page.goto(place.appUrl, { waitUntil: 'commit' });
    await first.page.waitForTimeout(delayMs);
    await first.kill();
    const second = await open();
    const faults = await faultsOfOpening(second.page, place.appUrl);
    const rows = await storedRows(second.page, 'takes', ['midi']);
    const instruments = await storedRows(second.page, 'instruments', ['name']);
    await second.kill();
    const lost = rows.length === takeCount ? [] : [`${rows.length} of ${takeCount} takes are there`];
    const nameless = instruments.some(({ name }) => name === 'The attic upright') ? [] : ['the instrument is missing'];
    return {
      when: `after ${Math.round(delayMs)} ms`,
      promisedCount: takeCount,
      faults: [...faults, ...lost, ...nameless],
    };
  });
}

type Opener = () => ReturnType<typeof openKillable>;

async function inProfile(
  { chromiumPath }: FaultPlace,
  run: (open: Opener, folder: string) => Promise<FaultRun>,
): Promise<FaultRun> {
  const folder = mkdtempSync(join(tmpdir(), 'killed-'));
  const opened: Awaited<ReturnType<Opener>>[] = [];
  const open = async () => {
    const browser = await openKillable(chromiumPath, join(folder, 'profile'));
    opened.push(browser);
    return browser;
  };
  try {
    return await run(open, folder);
  } finally {
    for (const browser of opened) await browser.kill().catch(() => undefined); // most are dead already
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** By the bars of the compass on the screen. */
async function notesCalledKept(page: Page): Promise<number[]> {
  const states = await page
    .locator('[role="img"] span[data-state]')
    .evaluateAll((bars) => bars.map((bar) => bar.getAttribute('data-state')));
  return states.flatMap((state, index) => (state === 'kept' ? [LOWEST_MIDI + index] : []));
}

async function faultsOfOpening(page: Page, appUrl: string): Promise<string[]> {
  await page.goto(appUrl);
  const heading = page.getByRole('heading', { level: 1 });
  await heading.waitFor();
  const title = (await heading.textContent()) ?? '';
  const isOpen = [texts.workshop.title, texts.workshop.empty.title].includes(title);
  return isOpen ? [] : [`the program does not open: ${title}`];
}

/** The screen says that an archive came in only in part. */
async function faultsOfTelling(page: Page, appUrl: string): Promise<string[]> {
  await page.goto(`${appUrl}#/records`);
  const notice = page.getByText(texts.records.import.interrupted('archive.zip'));
  const isTold = await notice.waitFor({ timeout: 20_000 }).then(
    () => true,
    () => false,
  );
  return isTold ? [] : ['nobody is told that the archive came in only in part'];
}

async function lookAt(page: Page, appUrl: string, archive: ArchiveFile): Promise<void> {
  await page.goto(`${appUrl}#/records`);
  await chooseFile(page, texts.records.import.choose, archive.path);
  await page.getByRole('button', { name: texts.common.putAway }).waitFor();
}

/** An instrument is in with all its takes, or not at all. */
async function broughtIn(page: Page, archive: ArchiveFile): Promise<{ wholeCount: number; halves: string[] }> {
  const names = new Map((await storedRows(page, 'instruments', ['name'])).map(({ id, name }) => [id, name]));
  const takes = await storedRows(page, 'takes', ['instrumentId']);
  const counts = archive.instruments.map(({ id, takeCount }) => {
    const found = takes.filter(({ instrumentId }) => instrumentId === id).length;
    return { isWhole: names.has(id) && found === takeCount, isAbsent: !names.has(id) && found === 0, found, id };
  });
  return {
    wholeCount: counts.filter(({ isWhole }) => isWhole).length,
    halves: counts
      .filter(({ isWhole, isAbsent }) => !isWhole && !isAbsent)
      .map(({ id, found }) => `${id} is half in, with ${found} takes`),
  };
}
