/** A visit as a technician makes it: a new instrument, a visit, the as-found survey; then both hands are on the piano. */
import type { Page } from 'playwright-core';
import { texts } from '../../../src/ui/texts.ts';
import { type StoredTake, storedTakes } from './storedTakes.ts';

export type SurveyWish = {
  /** 88 notes unless said. */
  readonly hasCompass85?: boolean;
  /** On an invented instrument with years of readings, so that there is something to compare with; a new one unless said. */
  readonly isOnDemonstration?: boolean;
  /** Ends of a section; all notes unless said. */
  readonly section?: readonly [fromMidi: number, toMidi: number];
};

/** Leaves the app on a new visit, to a new instrument unless said. */
export async function beginVisit(page: Page, wish: SurveyWish = {}): Promise<void> {
  if (wish.isOnDemonstration) await openDemonstration(page);
  else await addInstrument(page, wish);
  await page.getByRole('link', { name: texts.instrument.newVisit }).click();
  await page.getByLabel(texts.visit.form.humidity).fill('46');
  await page.getByRole('button', { name: texts.visit.form.saveAndGo }).click();
  await page.getByRole('button', { name: texts.visit.start.action['as-found'] }).waitFor();
}

async function addInstrument(page: Page, { hasCompass85 }: SurveyWish): Promise<void> {
  await page.getByRole('link', { name: texts.workshop.add }).click();
  await page.getByLabel(texts.workshop.form.name).fill('Grand in the small hall');
  if (hasCompass85) await page.getByLabel(texts.workshop.form.compass85).check();
  await page.getByRole('button', { name: texts.common.save }).click();
}

async function openDemonstration(page: Page): Promise<void> {
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  await page.getByRole('list', { name: texts.workshop.instruments }).getByRole('link').first().click();
}

/** Leaves the app where it listens. */
export async function beginSurvey(page: Page, wish: SurveyWish = {}): Promise<void> {
  await beginVisit(page, wish);
  const { section } = wish;
  if (section) {
    await page.getByLabel(texts.visit.scope.kinds.section).check();
    await page.getByLabel(texts.visit.scope.from).selectOption(String(section[0]));
    await page.getByLabel(texts.visit.scope.to, { exact: true }).selectOption(String(section[1]));
  }
  await page.getByRole('button', { name: texts.visit.start.action['as-found'] }).click();
  await startListening(page, texts.recording.start);
}

/** Presses the button that starts or goes on listening, until it listens. */
export async function startListening(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name }).click();
  await page.getByRole('button', { name }).waitFor({ state: 'hidden' });
}

/** Nothing is touched until every one of the notes has a good take in the database. */
export async function untilStored(page: Page, midi: readonly number[], patienceMs: number): Promise<void> {
  const isStored = (takes: readonly StoredTake[]) =>
    midi.every((wanted) => takes.some((take) => take.midi === wanted && take.isKept && take.isUsable));
  const endsAt = Date.now() + patienceMs;
  for (;;) {
    const takes = await storedTakes(page);
    if (isStored(takes)) return;
    if (Date.now() > endsAt) throw new Error(`not every note has a good take: ${JSON.stringify(takes)}`);
    await page.waitForTimeout(500);
  }
}

/** Ends the survey and loads the page anew, as after a break of the tablet; the survey's own screen is open then. */
export async function finishAndReload(page: Page): Promise<void> {
  await page.getByRole('button', { name: texts.recording.buttons.finish }).click();
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor({ timeout: 120_000 }); // what was heard is measured first
  await page.reload();
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor();
}
