import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, VisitId } from '../../../src/piano/ids.ts';
import type { InstrumentEvent, Survey, Visit } from '../../../src/piano/instrument.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { baselineInterval, type ChangeBaseline } from '../../../src/screens/recording/changeBaseline.ts';
import { changeText, heardChange, strayText } from '../../../src/screens/recording/heardChange.ts';
import { nextSurveyBook } from '../../../src/survey/surveyBook.ts';
import { planOfCompass } from '../../../src/survey/surveyPlan.ts';
import { readingAt } from '../plainReading.ts';
import { bookOf } from './bookOf.ts';

const PLAN = planOfCompass({ lowestMidi: 48, highestMidi: 72 }, 2);
const BASELINE: ChangeBaseline = PLAN.map(({ midi }) => ({
  reading: readingAt(midi, 0),
  visitedOn: '2025-05-14',
  stage: 'as-left',
}));

/** Notes from 48 up, all a little sharper than they were left, with ordinary scatter; the last one by as much as said. */
function played(lastCents: number): NoteReading[] {
  const steady = Array.from({ length: 12 }, (_, index) => readingAt(48 + index, 2 + ((index * 7) % 5) * 0.2));
  return [...steady, readingAt(60, lastCents)];
}

const changeOf = (readings: readonly NoteReading[], stage: Survey['stage'] = 'as-found', baseline = BASELINE) =>
  heardChange(bookOf(readings, PLAN), baseline, stage, null);

describe('the change of the note just heard', () => {
  it('is told in sign and word, since the day it was left', () => {
    const flat = changeOf([readingAt(60, -3.4)]);
    expect(flat?.changeCents).toBeCloseTo(-3.4, 6);
    expect(flat && changeText(flat)).toMatch(/^−3\.4.*cents, flatter than left on 14 May 2025$/);
    const found = BASELINE.map((each) => ({ ...each, stage: 'as-found' as const }));
    const sharp = changeOf([readingAt(60, 1.2)], 'as-found', found);
    expect(sharp && changeText(sharp)).toMatch(/^\+1\.2.*sharper than found on/);
  });

  it('is called none where it is below its uncertainty', () => {
    const still = changeOf([readingAt(60, 0.04)]);
    expect(still && changeText(still)).toMatch(/as left on/);
  });

  it('is not told of a string that was not read before, nor of a take that cannot be used, nor of a cough', () => {
    expect(changeOf([readingAt(60, 1, { stringPosition: 1 })])).toBeNull();
    expect(changeOf([readingAt(60, 1, { faults: ['clipped'] })])).toBeNull();
    const coughed = nextSurveyBook(bookOf([readingAt(60, 1)], PLAN), {
      kind: 'nothing-heard',
      reason: 'speech',
      atS: 9,
    });
    expect(heardChange(coughed, BASELINE, 'as-found', null)).toBeNull();
  });
});

describe('the warning', () => {
  it('comes where a note left its neighbours, and counts from them and not from zero', () => {
    const change = changeOf(played(-4.6));
    expect(change?.strayCents).toBeCloseTo(-7, 0);
    expect(change && strayText(change)).toBe('7 cents flatter than its neighbours: play it again?');
  });

  it('does not come where all moved alike, however far', () => {
    const change = changeOf(played(2.4));
    expect(change?.strayCents).toBeNull();
    expect(change && strayText(change)).toBe('');
  });

  it('asks no more once a second take says the same', () => {
    const twice = changeOf([...played(-4.6), readingAt(60, -4.5)]);
    expect(twice && strayText(twice)).toMatch(/7 cents flatter than its neighbours, twice alike$/);
    const other = changeOf([...played(-4.6), readingAt(60, 2.2)]);
    expect(other && strayText(other)).toBe('');
  });

  it('counts from neighbours that were read on the same day alone', () => {
    const older = BASELINE.map((each) => (each.reading.midi === 60 ? { ...each, visitedOn: '2023-01-02' } : each));
    const change = changeOf(played(-4.6), 'as-found', older);
    expect(change && changeText(change)).toMatch(/than left on 2 January 2023$/);
    expect(change?.strayCents).toBeNull();
  });

  it('is for as-found surveys, and needs neighbours', () => {
    expect(changeOf(played(-4.6), 'as-left')?.strayCents).toBeNull();
    expect(changeOf([readingAt(59, 2), readingAt(60, -4.6)])?.strayCents).toBeNull();
  });
});

describe('what a survey is compared with', () => {
  const instrumentId = 'i1' as InstrumentId;
  const visitOf = (id: string, visitedOn: string): Visit => ({
    id: id as VisitId,
    instrumentId,
    visitedOn,
    visitedBy: '',
    humidityPct: null,
    temperatureC: null,
    pitchStandardHz: 440,
    remark: '',
  });
  const surveyOf = (id: string, visitId: string, stage: Survey['stage']): Survey => ({
    id: id as SurveyId,
    visitId: visitId as VisitId,
    instrumentId,
    stage,
    startedAt: '2025-01-01T09:00:00Z',
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'centre strings',
  });
  const visits = [visitOf('v1', '2024-05-01'), visitOf('v2', '2025-05-01'), visitOf('v3', '2026-05-01')];
  const earlier = [surveyOf('s1', 'v1', 'as-left'), surveyOf('s2', 'v2', 'as-found'), surveyOf('s3', 'v2', 'as-left')];
  const tuned = (happenedOn: string, midi: number | null): InstrumentEvent => ({
    id: 'e1' as InstrumentEvent['id'],
    instrumentId,
    happenedOn,
    kind: 'tuned',
    fromMidi: midi,
    toMidi: midi,
    remark: '',
  });

  it('is the last as-left before the visit, for its as-found and its as-left alike', () => {
    const found = surveyOf('s4', 'v3', 'as-found');
    const left = surveyOf('s5', 'v3', 'as-left');
    for (const survey of [found, left])
      expect(baselineInterval(survey, visits, [...earlier, found, left], [])).toMatchObject({
        from: { visitedOn: '2025-05-01' },
        baseline: { stage: 'as-left', surveyIds: ['s3'] },
      });
  });

  it('is never a later visit', () => {
    const late = surveyOf('s6', 'v2', 'as-found');
    const found = baselineInterval(late, visits, [...earlier, surveyOf('s4', 'v3', 'as-left')], []);
    expect(found?.baseline).toMatchObject({ surveyIds: ['s1'] });
  });

  it('is nothing at the first visit, nor after a tuning that nobody surveyed', () => {
    expect(baselineInterval(surveyOf('s0', 'v1', 'as-found'), visits, earlier, [])).toBeNull();
    const now = surveyOf('s4', 'v3', 'as-found');
    expect(baselineInterval(now, visits, earlier, [tuned('2025-09-01', null)])?.baseline.known).toBe(false);
    expect(baselineInterval(now, visits, earlier, [tuned('2025-09-01', 60)])?.startedAnew).toEqual([
      { fromMidi: 60, toMidi: 60 },
    ]);
  });
});
