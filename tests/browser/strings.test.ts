import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { formatDate } from '../../src/piano/format.ts';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { pdfPages } from './support/pdfPages.ts';
import { playNotes } from './support/playedNotes.ts';

/** The invented garden house grand, with a morning at its bridge; the microphone hears C5 again and again. */
const C5_MIDI = 72;
const words = texts.strings;
let browser: Browser;
let context: BrowserContext;
let watched: WatchedPage;
let page: Page;
let instrumentUrl: string;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  context = await browser.newContext();
  await hookMicrophone(context, playNotes([{ midi: C5_MIDI }, { midi: C5_MIDI }], { seed: 11 }).wave);
  watched = await openApp(context);
  page = watched.page;
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  await page.getByRole('link', { name: 'The garden house grand' }).click();
  await page.getByRole('link', { name: words.link, exact: true }).waitFor();
  instrumentUrl = page.url();
});
afterAll(() => browser.close());

const grid = () => page.getByRole('grid', { name: words.desk.caption });
const decided = (count: number) => page.getByText(new RegExp(`^${count} of 98 strings decided`));

it('lists the strings that beat, the most audible first, without a fault', async () => {
  await page.getByRole('link', { name: words.link, exact: true }).click();
  await grid().waitFor();
  await decided(4).waitFor();
  expect(await grid().locator('tbody tr').first().textContent()).toContain(words.audible.plain);
  await page.getByRole('group', { name: /^Map of 98 strings/ }).waitFor();
  await page.getByRole('table', { name: words.unisons.caption }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('decides ten strings by keyboard alone, and takes the last step back', async () => {
  await page.getByLabel(words.desk.shown.open).check();
  await grid().locator('tr[tabindex="0"]').focus();
  for (const key of ['3', '3', '2', '2', 'Enter']) await page.keyboard.press(key);
  await decided(9).waitFor();
  // Five more, marked on the way and decided together.
  for (let step = 0; step < 4; step += 1) await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('4');
  await decided(14).waitFor();
  await page.keyboard.press('1');
  await decided(15).waitFor();
  await page.keyboard.press('Control+z');
  await decided(14).waitFor();
});

it('prints the work list, kind by kind, and nothing of the program around it', async () => {
  await page.getByRole('link', { name: words.workList }).click();
  await page.getByRole('heading', { name: words.work.group(words.choices['replace wire'], 3) }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  const pages = await pdfPages(await page.pdf({ format: 'A4' }));
  const text = pages.map((one) => one.text).join(' ');
  const { choices } = words;
  const groups = [
    words.work.group(choices['replace pin'], 5),
    words.work.group(choices['bridge work'], 4),
    words.work.group(choices['replace wire'], 3),
  ];
  const places = groups.map((group) => text.indexOf(group));
  expect(places.every((place) => place >= 0)).toBe(true);
  expect([...places].sort((a, b) => a - b)).toEqual(places);
  expect(text).toContain('The garden house grand');
  expect(text).toContain('E5, left string');
  for (const outside of [words.title, texts.common.workshop]) expect(text).not.toContain(outside);
});

it('marks work as done, with its date, and the mark holds', async () => {
  const box = page.getByLabel(words.work.doneBox('E5, left string', words.choices['replace wire']));
  await box.click();
  await page.getByText(words.work.progress(3, 12)).waitFor();
  await page.reload();
  await page.getByText(words.work.progress(3, 12)).waitFor();
  expect(await page.getByLabel(words.work.doneOn('E5, left string')).inputValue()).toMatch(/^\d{4}-\d{2}-\d{2}$/);
});

it('says of a string what was tried, what was done and whether it helped, with its sound', async () => {
  await page.goto(`${instrumentUrl}/strings/${C5_MIDI}/1`);
  await page
    .getByText(words.trials.results.conclusions['one trial helps'](words.trials.kinds['hold the bridge pin']))
    .waitFor();
  await page.getByText(words.after.outcomes.gone).waitFor();
  const withSound = page
    .getByLabel(words.string.recording)
    .getByRole('option', { name: /with sound/ })
    .first();
  await page.getByLabel(words.string.recording).selectOption(await withSound.getAttribute('value'));
  await page.getByRole('img', { name: /^Loudness of partial 1 from the strike on/ }).waitFor();
  await page.getByRole('button', { name: words.string.play }).click();
  await page.getByRole('button', { name: words.string.stop }).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('records a string before and after something was done, in a visit of today that it begins', async () => {
  await page.goto(`${instrumentUrl}/strings/${C5_MIDI}/3`);
  const { record, results, kinds } = words.trials;
  await page.getByText(record.willMakeBoth).waitFor();
  await page.getByRole('button', { name: record.begin }).click();
  const sides = page.getByRole('listitem').filter({ hasText: /take/ });
  await sides.filter({ hasText: /^Before: [1-9] take/ }).waitFor({ timeout: 30_000 });
  await page.getByRole('radio', { name: kinds['tap the wire to the bridge'] }).check();
  await page.getByRole('button', { name: record.doIt }).click();
  await sides.filter({ hasText: /^After: tap the wire to the bridge: [1-9] take/ }).waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: record.end }).click();
  await page.getByRole('heading', { name: new RegExp(`^${kinds['tap the wire to the bridge']}`) }).waitFor();
  // The file holds the same string each time, and it does not beat.
  await page.getByText(results.nothingBeats).waitFor();
  await page.goto(instrumentUrl);
  await page.getByRole('link', { name: formatDate(new Date().toISOString().slice(0, 10)), exact: true }).waitFor();
  expect(watched.complaints).toEqual([]);
});
