import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatSize } from '../../src/piano/formatSize.ts';
import { texts } from '../../src/ui/texts.ts';
import type { SurveyTruthRow } from '../reference/sampleAudio.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginVisit } from './support/recordSurvey.ts';
import { storedSounds } from './support/storedSounds.ts';
import { storedTakes } from './support/storedTakes.ts';

const sampleAudio = (name: string) => fileURLToPath(new URL(`../../sample-audio/${name}`, import.meta.url));
const SURVEY = sampleAudio('survey-88-notes.wav');
/** The same code on the same samples. */
const TOLERANCE_CENTS = 0.001;
/** A slow machine measures a take in some seconds; the tests do not ask how fast it is. */
const PATIENT = { timeout: 240_000 };

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  folder = mkdtempSync(join(tmpdir(), 'recordings-'));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function openVisit(): Promise<WatchedPage> {
  const context = await browser.newContext();
  const watched = await openApp(context);
  await beginVisit(watched.page);
  return watched;
}

const pick = (page: Page, paths: readonly string[]) =>
  page.getByLabel(texts.recordings.title, { exact: true }).setInputFiles([...paths]);
const finish = async (page: Page) => {
  await page.getByRole('button', { name: texts.recording.buttons.finish }).click();
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor();
};
const openNote = async (page: Page, note: string) => {
  const table = page.getByRole('table', { name: texts.visit.survey.caption });
  await table.getByRole('link', { name: note, exact: true }).click();
  await page.getByRole('table', { name: texts.take.partialsCaption }).waitFor();
};

/** From where each string of the recording stands. */
function trueCents(): ReadonlyMap<number, number> {
  const rows: SurveyTruthRow[] = JSON.parse(readFileSync(sampleAudio('survey-88-notes.truth.json'), 'utf8'));
  return new Map(rows.map(({ midi, cents }) => [midi, cents]));
}

async function centsByCommandLine(names: readonly string[]): Promise<ReadonlyMap<number, number>> {
  const runCli = fileURLToPath(new URL('../../tools/runCli.mjs', import.meta.url));
  const args = [runCli, 'measure', ...names.map(sampleAudio), '--json'];
  const { stdout } = await promisify(execFile)(process.execPath, args, { maxBuffer: 1e9 });
  const documents = JSON.parse(stdout) as { readings: { midi: number; cents: number }[] }[];
  return new Map(documents.flatMap(({ readings }) => readings.map(({ midi, cents }) => [midi, cents] as const)));
}

describe('one recording of a whole survey', () => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await openVisit();
  });
  afterAll(() => watched.page.context().close());

  it('gives a kept take for each of its 88 notes, as near to the truth as the command line comes', async () => {
    const { page } = watched;
    await pick(page, [SURVEY]);
    await page.getByText(texts.recordings.done(88, 1)).waitFor(PATIENT);
    await finish(page);
    const takes = (await storedTakes(page)).filter((take) => take.isKept && take.isUsable);
    expect(takes.map((take) => take.midi).sort((a, b) => a - b)).toEqual(Array.from({ length: 88 }, (_, i) => 21 + i));
    const truth = trueCents();
    const errors = takes.map(({ midi, offsetCents }) => Math.abs(offsetCents - (truth.get(midi) ?? Number.NaN)));
    const sorted = errors.sort((a, b) => a - b);
    expect(sorted[Math.ceil(0.95 * 88) - 1]).toBeLessThan(0.3);
    expect(sorted.at(-1)).toBeLessThan(3);
    expect(watched.complaints).toEqual([]);
  });

  it('names the file in the microphone’s place, and keeps the sound of every take', async () => {
    const { surveys, sounds } = await storedSounds(watched.page);
    expect(surveys).toMatchObject([{ deviceLabel: 'survey-88-notes.wav', sampleRateHz: 22_050 }]);
    expect(sounds).toHaveLength(88);
    for (const { durationS } of sounds) expect(durationS).toBeLessThan(4.4);
    const byteCount = sounds.reduce((sum, sound) => sum + sound.byteCount, 0);
    await watched.page.getByText(texts.sound.survey.size(formatSize(byteCount), 88)).waitFor();
    expect(await accessibilityFaults(watched.page)).toEqual([]);
  });

  it('plays a take, and measures it again without a change, keeping both figures', async () => {
    const { page } = watched;
    await openNote(page, 'A4');
    const words = texts.sound;
    await page.getByRole('button', { name: words.take.play, exact: true }).click();
    await page.getByRole('button', { name: words.take.stop, exact: true }).waitFor();
    await page.getByRole('button', { name: words.take.play, exact: true }).waitFor(); // when it has sounded to its end
    await page.getByRole('button', { name: words.again.action }).click();
    await page.getByText(words.again.same('A4')).waitFor(PATIENT);
    const history = page.getByRole('table', { name: words.history.caption });
    await history.waitFor();
    expect(await history.getByRole('row').count()).toBe(3);
    expect(await history.getByText('0.000').count()).toBe(1);
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(watched.complaints).toEqual([]);
  });

  it('measures the survey again, and stops when told to', async () => {
    const { page } = watched;
    await page.goBack();
    await page.getByRole('button', { name: texts.sound.again.action }).click();
    await page.getByText(/^Measuring again: [2-9] of 88 takes/).waitFor(PATIENT);
    await page.getByRole('button', { name: texts.sound.again.cancel, exact: true }).click();
    const told = await page.getByText(/^Stopped\./).textContent(PATIENT);
    expect(told).toContain(texts.sound.again.unchanged);
    const again = (await storedTakes(page)).filter((take) => take.readingCount > 1);
    expect(again.length).toBeGreaterThanOrEqual(2);
    expect(again.length).toBeLessThan(88);
  });
});

it('reads many recordings of single notes as the command line does, and names the one that is none', async () => {
  const { page, complaints } = await openVisit();
  const renamed = join(folder, 'remarks.wav');
  writeFileSync(renamed, 'The hammers were voiced in spring.\n'.repeat(50));
  const names = ['a0-one-string.wav', 'a4-one-string.flac', 'c6-false-beat.wav', 'c8-one-string.wav'];
  const byCommandLine = centsByCommandLine(names); // meanwhile
  await pick(page, [...names.map(sampleAudio), renamed]);
  await page.getByText(/takes were read from 4 recordings/).waitFor(PATIENT);
  await page.getByText(/^remarks\.wav: .*not/).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  await finish(page);
  const kept = (await storedTakes(page)).filter((take) => take.isKept);
  expect(kept.map((take) => take.midi).sort((a, b) => a - b)).toEqual([21, 69, 84, 108]);
  const expected = await byCommandLine;
  for (const { midi, offsetCents } of kept)
    expect(Math.abs(offsetCents - (expected.get(midi) ?? Number.NaN)), `note ${midi}`).toBeLessThan(TOLERANCE_CENTS);
  const { surveys } = await storedSounds(page);
  expect(surveys[0]?.deviceLabel).toMatch(/^a0-one-string\.wav, .* and 2 more$/);
  expect(complaints).toEqual([]);
  await page.context().close();
});

it('keeps what was kept when the reading is stopped midway', async () => {
  const { page, complaints } = await openVisit();
  await pick(page, [SURVEY]);
  const keptCount = async () => (await storedTakes(page)).filter((take) => take.isKept).length;
  await expect.poll(keptCount, PATIENT).toBeGreaterThan(4);
  await page.getByRole('button', { name: texts.recordings.stop }).click();
  await page.getByText(texts.recordings.stopped).waitFor();
  await finish(page);
  const kept = await keptCount();
  expect(kept).toBeGreaterThan(4);
  expect(kept).toBeLessThan(88);
  const rows = page.getByRole('table', { name: texts.visit.survey.caption }).getByRole('row');
  expect(await rows.count()).toBe(kept + 1);
  expect(complaints).toEqual([]);
  await page.context().close();
});

it('keeps every figure where there is no room for sound, and says so', async () => {
  const context = await browser.newContext();
  await context.addInitScript(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...values) {
      if (this.name === 'sounds') throw new DOMException('The storage is full.', 'QuotaExceededError');
      return put.apply(this, values);
    };
  });
  const { page } = await openApp(context);
  await beginVisit(page);
  await pick(page, [sampleAudio('a4-one-string.wav')]);
  await page.getByText(texts.recordings.done(1, 1)).waitFor(PATIENT);
  await page.getByText(texts.sound.dropped['storage-full']).waitFor();
  await finish(page);
  expect((await storedTakes(page)).map((take) => take.midi)).toEqual([69]);
  expect((await storedSounds(page)).sounds).toEqual([]);
  await context.close();
});
