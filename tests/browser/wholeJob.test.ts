/** The whole job in one go: a new piano, its schedule, both surveys of a visit, the verdict, a decision, the page for its owner, and the archive on another device. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { englishReportWords } from '../../src/report/words.ts';
import { texts } from '../../src/ui/texts.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { pdfPages } from './support/pdfPages.ts';
import { startListening, untilStored } from './support/recordSurvey.ts';
import { storedTakes } from './support/storedTakes.ts';

const NAME = 'Eight notes of a grand';
/** A4 to E5: a short piano, so that the whole job is short. */
const MIDIS = [69, 70, 71, 72, 73, 74, 75, 76];
const SAMPLE_RATE_HZ = 44_100;
/** As found, each note stands elsewhere; as left, all stand where they should. */
const foundCents = (midi: number) => ((midi * 5) % 9) - 12;
/** The sounds are clean: the readings are good to far better than this. */
const TOLERANCE_CENTS = 0.05;
const SCHEDULE = [
  'note\tstrings\tspeaking_length_mm\twire_diameter_mm\twire_grade',
  ...['A4', 'A#4', 'B4', 'C5', 'C#5', 'D5', 'D#5', 'E5'].map((note, index) => `${note}\t3\t${400 - 20 * index}\t1\t`),
].join('\n');

function wave(centsOf: (midi: number) => number, seed: number): Buffer {
  const { samples } = synthesizeSurvey({
    notes: MIDIS.map((midi) => ({ strings: [{ midi, offsetCents: centsOf(midi) }], holdS: 1.2 })),
    sampleRateHz: SAMPLE_RATE_HZ,
    gapS: 0.2,
    leadS: 1,
    tailS: 2,
    noiseDbfs: -75,
    seed,
  });
  return Buffer.from(writeWave(samples, SAMPLE_RATE_HZ, 'float'));
}

let browser: Browser;
let folder: string;
let watched: WatchedPage;
let page: Page;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'whole-job-'));
  browser = await openBrowser({ kind: 'none' });
  const context = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
  await hookMicrophone(context, wave(foundCents, 1));
  watched = await openApp(context);
  page = watched.page;
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

const link = (name: string | RegExp, on = page) => on.getByRole('link', { name, exact: true });
const button = (name: string, on = page) => on.getByRole('button', { name, exact: true });
const surveyTable = (on = page) => on.getByRole('table', { name: texts.visit.survey.caption });

/** The button names its key, too. */
async function finishSurvey(): Promise<void> {
  await page.getByRole('button', { name: texts.recording.buttons.finish }).click();
  await surveyTable().waitFor();
}

/** What stands on the sheet, which is set apart from the program's own page. */
const pageText = (on: Page) =>
  on.evaluate(() => {
    const sheet = [...document.querySelectorAll('main *')].find((element) => element.shadowRoot);
    return sheet?.shadowRoot?.textContent ?? '';
  });

async function toInstrument(on = page): Promise<void> {
  await link(texts.common.productName, on).click();
  await link(NAME, on).click();
  await link(texts.report.link, on).waitFor();
}

it('a new piano of a few notes', async () => {
  const form = texts.workshop.form;
  await link(texts.workshop.add).click();
  await page.getByLabel(form.name, { exact: true }).fill(NAME);
  await page.getByRole('group', { name: form.compass }).getByLabel(form.compassOther).check();
  await page.getByLabel(form.lowest, { exact: true }).fill('A4');
  await page.getByLabel(form.highest, { exact: true }).fill('E5');
  await button(texts.common.save).click();
  await page.getByText(texts.instrument.visits.firstSteps.begin).waitFor();
});

it('its stringing schedule, pasted from a spreadsheet, and what the wire pulls', async () => {
  await link(texts.stringing.link).click();
  await button(texts.stringing.schedules.beginAsItIs).click();
  await page.getByRole('grid').waitFor();
  await page.locator('[role="grid"] [tabindex="0"]').focus();
  await page.evaluate((text) => navigator.clipboard.writeText(text), SCHEDULE);
  await page.keyboard.press('Control+v');
  await page.getByText(/cells in 8 rows pasted/).waitFor();
  await page.locator('[data-writing="saved"]').waitFor();
  await page
    .getByText(/of 24 strings/)
    .first()
    .waitFor();
});

it('the as-found survey through the microphone, no hand on the program', async () => {
  await toInstrument();
  await link(texts.instrument.newVisit).click();
  await page.getByLabel(texts.visit.form.humidity).fill('46');
  await button(texts.visit.form.saveAndGo).click();
  await button(texts.visit.start.action['as-found']).click();
  await startListening(page, texts.recording.start);
  await untilStored(page, MIDIS, 120_000);
  await finishSurvey();
});

it('the as-left survey from a recording, on the visit that is still open', async () => {
  await toInstrument();
  await page.getByRole('link', { name: /^Go on with the visit of/ }).click();
  const path = join(folder, 'as-left.wav');
  writeFileSync(
    path,
    wave(() => 0, 2),
  );
  await page.getByLabel(texts.recordings.title, { exact: true }).setInputFiles(path);
  await page.getByText(texts.recordings.done(MIDIS.length, 1)).waitFor({ timeout: 120_000 });
  await finishSurvey();
  const takes = (await storedTakes(page)).filter(({ isKept, isUsable }) => isKept && isUsable);
  for (const midi of MIDIS) {
    const cents = takes.filter((take) => take.midi === midi).map(({ offsetCents }) => offsetCents);
    const isNear = (wanted: number) => cents.some((value) => Math.abs(value - wanted) < TOLERANCE_CENTS);
    expect([isNear(foundCents(midi)), isNear(0)], `note ${midi}: ${cents.join(', ')}`).toEqual([true, true]);
  }
});

it('a verdict that one visit cannot give', async () => {
  await toInstrument();
  const state = texts.stability.verdict.states['not enough evidence'];
  await page.getByText(state).first().waitFor();
  await link(texts.stability.open).click();
  await page.getByText(state).first().waitFor();
});

it('a decision for every string', async () => {
  const { desk, choices } = texts.strings;
  await toInstrument();
  await link(texts.strings.link).click();
  await page.getByLabel(desk.shown.open).check();
  for (let decided = 0; decided < MIDIS.length; decided += 1) {
    await page.getByText(desk.progress(decided, MIDIS.length)).waitFor();
    await page.getByRole('button', { name: choices.leave }).click();
  }
  await page.getByText(desk.progress(MIDIS.length, MIDIS.length)).waitFor();
});

it('the page for its owner, on one sheet of paper', async () => {
  await toInstrument();
  await link(texts.report.link).click();
  await page.getByText(englishReportWords.verdict.titles['not enough evidence']).waitFor();
  const pages = await pdfPages(await page.pdf({ format: 'A4' }));
  expect(pages).toHaveLength(1);
  for (const wanted of [NAME, englishReportWords.verdict.titles['not enough evidence'], englishReportWords.method.made])
    expect(pages[0]?.text).toContain(wanted);
});

it('the same figures on another device, from the archive', async () => {
  const figuresOf = async (on: Page) => {
    const found: string[] = [];
    for (const stage of [texts.instrument.visits.asFound, texts.instrument.visits.asLeft]) {
      await toInstrument(on);
      const title = stage === texts.instrument.visits.asFound ? 0 : 1;
      await on
        .getByRole('table', { name: texts.instrument.visits.caption })
        .getByRole('link', { name: /notes$/ })
        .nth(title)
        .click();
      await surveyTable(on).waitFor();
      found.push((await surveyTable(on).textContent()) ?? '');
    }
    await toInstrument(on);
    await link(texts.report.link, on).click();
    await on.getByText(englishReportWords.verdict.titles['not enough evidence']).waitFor();
    found.push(await pageText(on));
    return found;
  };
  const mine = await figuresOf(page);
  await link(texts.records.title).click();
  const downloading = page.waitForEvent('download');
  await button(texts.records.backup.download).click();
  const path = join(folder, 'archive.zip');
  await (await downloading).saveAs(path);
  const other = await openApp(await browser.newContext());
  await link(texts.records.title, other.page).click();
  await other.page.getByLabel(texts.records.import.choose).setInputFiles(path);
  await button(texts.records.import.bringIn, other.page).click();
  await other.page.getByText(/^Brought in: /).waitFor();
  expect(await figuresOf(other.page)).toEqual(mine);
  const [found, left, sheet] = mine;
  expect(found).not.toBe(left);
  expect(left).toContain('A4');
  expect(sheet).toContain(NAME);
  expect([...watched.complaints, ...other.complaints]).toEqual([]);
});
