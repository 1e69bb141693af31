import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, TrialId, VisitId } from '../../../src/piano/ids.ts';
import type { BridgeTrial } from '../../../src/piano/stringingRecords.ts';
import { benchPlan, mayBeKept } from '../../../src/screens/strings/benchSurvey.ts';
import {
  AS_IT_WAS,
  sideBefore,
  type TrialSide,
  trialOfSide,
  withTake,
} from '../../../src/screens/strings/trialSides.ts';
import { concludedTrials, standingTrials } from '../../../src/screens/strings/trialTakes.ts';
import { beatingReading } from './beatingReading.ts';
import { decisionOf, surveyAt, takesOn, visitOn } from './stringRecordsOf.ts';

const situation = {
  instrumentId: 'i' as InstrumentId,
  visits: [visitOn('2024-03-01')],
  surveys: [],
  midi: 72,
  today: '2024-05-01',
  now: '2024-05-01T10:00:00Z',
  newVisitId: () => 'nv' as VisitId,
  newSurveyId: () => 'ns' as SurveyId,
};

describe('where recordings at the bridge go', () => {
  it('is a new visit of today with the last one’s pitch standard, and a survey of single strings in it', () => {
    const plan = benchPlan(situation);
    expect(plan).toMatchObject({ makesVisit: true, makesSurvey: true });
    expect(plan.visit).toMatchObject({ visitedOn: '2024-05-01', visitedBy: 'Ida', pitchStandardHz: 442 });
    expect(plan.survey).toMatchObject({
      visitId: 'nv',
      strings: 'single strings',
      stage: 'as-found',
      scope: { kind: 'chosen', notesMidi: [72] },
    });
  });

  it('is today’s visit where there is one, as left where it was tuned already', () => {
    const today = visitOn('2024-05-01');
    const plan = benchPlan({
      ...situation,
      visits: [today],
      surveys: [surveyAt(today, { strings: 'centre strings', stage: 'as-left' })],
    });
    expect(plan).toMatchObject({ makesVisit: false, makesSurvey: true, visit: today, survey: { stage: 'as-left' } });
  });

  it('is today’s survey of chosen notes where there is one, which then asks for this note too', () => {
    const today = visitOn('2024-05-01');
    const survey = surveyAt(today, { scope: { kind: 'chosen', notesMidi: [60, 80] } });
    const plan = benchPlan({ ...situation, visits: [today], surveys: [survey] });
    expect(plan).toMatchObject({ makesVisit: false, makesSurvey: false, addsNote: true, survey: { id: survey.id } });
    expect(plan.survey.scope).toEqual({ kind: 'chosen', notesMidi: [60, 72, 80] });
  });

  it('counts only a first take, and only where the visit has none of the string', () => {
    const place = { midi: 60, stringPosition: 2 } as const;
    const takes = takesOn('2024-05-01', [beatingReading(60)]);
    expect(mayBeKept(takes, 'v 2024-05-01' as VisitId, place, true)).toBe(false);
    expect(mayBeKept(takes, 'v 2024-06-01' as VisitId, place, true)).toBe(true);
    expect(mayBeKept([], 'v 2024-06-01' as VisitId, place, false)).toBe(false);
  });
});

describe('recordings one after the other', () => {
  const side = (kind: TrialSide['kind'], takeId: string): TrialSide => ({
    ...AS_IT_WAS,
    kind,
    trialId: kind && (`trial ${takeId}` as TrialId),
    takeIds: [takeId as TakeId],
  });
  const held = [
    side(null, 'a'),
    side('hold the bridge pin', 'b'),
    side('tap the wire to the bridge', 'c'),
    side('other', 'd'),
  ];
  const owner = {
    instrumentId: 'i' as InstrumentId,
    visitId: 'v' as VisitId,
    surveyId: 's' as SurveyId,
    midi: 60,
    stringPosition: 2 as const,
  };

  it('follow on the last one whose doing lasts: a held pin is let go again', () => {
    expect(sideBefore(held, 2)?.takeIds).toEqual(['a']);
    expect(sideBefore(held, 3)?.takeIds).toEqual(['c']);
  });

  it('make a trial each, with the takes of both sides', () => {
    expect(trialOfSide(held, 1, owner, '2024-05-01T10:00:00Z')).toMatchObject({
      id: 'trial b',
      kind: 'hold the bridge pin',
      takesBefore: ['a'],
      takesAfter: ['b'],
    });
    expect(trialOfSide(held, 0, owner, '')).toBeNull();
    expect(trialOfSide([AS_IT_WAS, side('other', 'x')], 1, owner, '')).toBeNull();
  });

  it('take in a stroke that still sounded on the side where it was struck', () => {
    const sides = withTake(held, 2, 'late' as TakeId, false);
    expect(sides[2]).toMatchObject({ takeIds: ['c', 'late'], faultyCount: 1 });
    expect(sides[3]?.takeIds).toEqual(['d']);
  });
});

describe('trials of a string', () => {
  const takes = takesOn('2024-05-01', [beatingReading(60, { rateHz: 1.5, depthDb: 10 }), beatingReading(60)], false);
  const trial = (triedAt: string): BridgeTrial => ({
    id: 't' as TrialId,
    instrumentId: 'i' as InstrumentId,
    visitId: 'v' as VisitId,
    surveyId: 's' as SurveyId,
    midi: 60,
    stringPosition: 2,
    kind: 'hold the bridge pin',
    triedAt,
    takesBefore: ['2024-05-01 60/2 0' as TakeId],
    takesAfter: ['2024-05-01 60/2 1' as TakeId],
    remark: '',
  });

  it('are judged by the readings of their takes', () => {
    const own = concludedTrials([trial('2024-05-01T10:00:00Z')], takes).get('60/2');
    expect(own?.conclusion.named).toMatchObject({ outcome: 'stops', finding: 'bridge pin loose' });
  });

  it('cannot be judged where their takes are gone', () => {
    expect(concludedTrials([trial('2024-05-01T10:00:00Z')], []).get('60/2')?.conclusion.kind).toBe('cannot tell');
  });

  it('say nothing any more once work on the string was done', () => {
    const place = { midi: 60, stringPosition: 2 } as const;
    const done = [decisionOf({ doneOn: '2024-05-04' })];
    expect(standingTrials([trial('2024-05-01T10:00:00Z')], done, place)).toEqual([]);
    expect(standingTrials([trial('2024-05-05T10:00:00Z')], done, place)).toHaveLength(1);
    expect(standingTrials([trial('2024-05-01T10:00:00Z')], [decisionOf()], place)).toHaveLength(1);
  });
});
