import { expect, it } from 'vitest';
import type { InstrumentId, SurveyId, VisitId } from '../../../src/piano/ids.ts';
import type { Survey, Visit } from '../../../src/piano/instrument.ts';
import { openVisit } from '../../../src/screens/instrument/openVisit.ts';

const visit = (visitedOn: string): Visit => ({
  id: `v ${visitedOn}` as VisitId,
  instrumentId: 'i' as InstrumentId,
  visitedOn,
  visitedBy: '',
  humidityPct: null,
  temperatureC: null,
  pitchStandardHz: 440,
  remark: '',
});
const survey = (visitedOn: string, stage: Survey['stage'], finishedAt: string | null): Survey => ({
  id: 's' as SurveyId,
  visitId: visit(visitedOn).id,
  instrumentId: 'i' as InstrumentId,
  stage,
  startedAt: `${visitedOn}T10:00:00Z`,
  finishedAt,
  deviceLabel: '',
  sampleRateHz: 48_000,
  strings: 'centre strings',
});
const YEARS_AGO = visit('2020-05-01');
const TODAY = '2026-03-10';

it('is the visit of today, whatever was recorded', () => {
  const today = visit(TODAY);
  expect(openVisit([YEARS_AGO, today], [survey(TODAY, 'as-left', `${TODAY}T11:00:00Z`)], TODAY)).toBe(today);
});

it('is a visit of the days before as long as no as-left survey of it was ended', () => {
  const before = visit('2026-03-08');
  expect(openVisit([before], [survey('2026-03-08', 'as-found', '2026-03-08T11:00:00Z')], TODAY)).toBe(before);
  expect(openVisit([before], [survey('2026-03-08', 'as-left', null)], TODAY)).toBe(before);
  expect(openVisit([before], [survey('2026-03-08', 'as-left', '2026-03-08T12:00:00Z')], TODAY)).toBeNull();
});

it('is none long ago, ahead, or where there was no visit', () => {
  expect(openVisit([visit('2026-03-06')], [], TODAY)).toBeNull();
  expect(openVisit([YEARS_AGO, visit('2026-03-11')], [], TODAY)).toBeNull();
  expect(openVisit([], [], TODAY)).toBeNull();
});
