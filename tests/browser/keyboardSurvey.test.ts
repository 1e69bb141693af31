import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { formatNote } from '../../src/piano/format.ts';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { pressOn, tabTo, typeInto } from './support/keyboardWalk.ts';
import { openApp } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { playNotes } from './support/playedNotes.ts';
import { untilStored } from './support/recordSurvey.ts';
import { watchMicrophone } from './support/watchedMicrophone.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
});
afterAll(() => browser.close());

const { scope } = texts.visit;
const { recording } = texts;

it('a whole short survey goes without a pointer, and no screen on the way has a fault of accessibility', async () => {
  const played = playNotes([{ midi: 60 }, { midi: 61 }, { midi: 63 }], { seed: 41 });
  const context = await browser.newContext();
  await watchMicrophone(context, [played.wave]);
  const { page, complaints } = await openApp(context);
  const link = (name: string) => page.getByRole('link', { name });
  const button = (name: string) => page.getByRole('button', { name });

  await pressOn(page, link(texts.workshop.add));
  await typeInto(page, page.getByLabel(texts.workshop.form.name), 'Practice room upright');
  await pressOn(page, button(texts.common.save));
  await pressOn(page, link(texts.instrument.newVisit));
  await pressOn(page, button(texts.visit.form.saveAndGo));

  await tabTo(page, page.getByLabel(scope.kinds.all));
  for (const kind of ['sample', 'section', 'chosen'] as const) {
    await page.keyboard.press('ArrowRight');
    await page.getByLabel(scope.kinds[kind]).and(page.locator(':checked')).waitFor();
    expect(await accessibilityFaults(page), kind).toEqual([]);
  }
  for (const midi of [60, 61, 62, 63])
    await pressOn(page, page.getByRole('button', { name: formatNote(midi), exact: true }));
  await page.getByText(scope.chosenCount(4)).waitFor();
  await tabTo(page, page.getByLabel(texts.common.strings['single strings']));
  await page.keyboard.press('ArrowLeft');
  await pressOn(page, button(texts.visit.start.action['as-found']));

  await page.getByRole('button', { name: recording.start }).waitFor();
  await page.keyboard.press('k');
  await tabTo(page, page.getByLabel(recording.desk.keys.PageDown));
  await page.keyboard.type(recording.desk.actions.skip);
  expect(await accessibilityFaults(page), 'settings').toEqual([]);
  await page.keyboard.press('Escape');
  await pressOn(page, button(recording.start));
  await untilStored(page, [60, 61, 63], 30_000);
  expect(await accessibilityFaults(page), 'recording').toEqual([]);

  await page.keyboard.press('PageDown'); // the foot switch leaves out the note that is still missing
  await page.getByRole('button', { name: `${formatNote(62)}, ${texts.common.noteStates.skipped}` }).waitFor();
  await page.keyboard.press('p');
  await page.getByText(recording.paused).waitFor();
  await page.keyboard.press('p');
  await page.getByText(recording.paused).waitFor({ state: 'hidden' });
  await page.keyboard.press('f');
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor();
  await page.getByText(`${texts.visit.survey.skipped}: ${formatNote(62)}`).waitFor();
  expect(complaints).toEqual([]);
  await context.close();
});
