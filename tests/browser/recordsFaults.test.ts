/** The browser killed at random moments, with fixed seeds; `npm run bench -- faults` does it a hundred times. */
import { expect, inject, it } from 'vitest';
import { type FaultPlace, killedImport, killedMigration, killedSurvey, SURVEY_FILE } from './support/faultRuns.ts';

const place = (): FaultPlace => ({
  chromiumPath: inject('chromiumPath'),
  appUrl: inject('appUrl'),
  surveyFile: SURVEY_FILE,
});

it.each([11])('keeps every reading that the screen called kept, when killed in a survey (seed %i)', async (seed) => {
  const run = await killedSurvey(place(), seed);
  expect(run.faults).toEqual([]);
  expect(run.promisedCount).toBeGreaterThan(0);
});

it.each([21])('has whole instruments only, when killed while bringing some in (seed %i)', async (seed) => {
  expect((await killedImport(place(), seed)).faults).toEqual([]);
});

it.each([31, 32])('opens with every row, when killed while its version grows (seed %i)', async (seed) => {
  expect((await killedMigration(place(), seed)).faults).toEqual([]);
});
