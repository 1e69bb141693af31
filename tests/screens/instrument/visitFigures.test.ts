import { describe, expect, it } from 'vitest';
import type { EventId, InstrumentId, SurveyId, TakeId, VisitId } from '../../../src/piano/ids.ts';
import type { EventKind, InstrumentEvent, Survey, SurveyStage, Take, Visit } from '../../../src/piano/instrument.ts';
import {
  changeIntervals,
  intervalChange,
  visitFigures,
  wireWorkWithin,
  yearsBetween,
} from '../../../src/screens/instrument/visitFigures.ts';
import { readingAt } from '../plainReading.ts';

const instrumentId = 'i1' as InstrumentId;

function visitOn(visitedOn: string): Visit {
  const id = visitedOn as VisitId;
  return {
    id,
    instrumentId,
    visitedOn,
    visitedBy: '',
    humidityPct: 40,
    temperatureC: 20,
    pitchStandardHz: 440,
    remark: '',
  };
}

/** A survey of A4 (and A3) at an offset, with its kept takes. */
function surveyOf(visit: Visit, stage: SurveyStage, offsetsCents: Record<number, number>) {
  const survey: Survey = {
    id: `${visit.id} ${stage}` as SurveyId,
    visitId: visit.id,
    instrumentId,
    stage,
    startedAt: `${visit.visitedOn}T10:00:00Z`,
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'centre strings',
  };
  const takes = Object.entries(offsetsCents).map(
    ([midi, cents]): Take => ({
      id: `${survey.id} ${midi}` as TakeId,
      surveyId: survey.id,
      visitId: visit.id,
      instrumentId,
      midi: Number(midi),
      stringPosition: 2,
      recordedAt: survey.startedAt,
      isKept: true,
      reading: readingAt(Number(midi), cents),
    }),
  );
  return { survey, takes };
}

function eventOn(happenedOn: string, kind: EventKind): InstrumentEvent {
  return {
    id: `${happenedOn} ${kind}` as EventId,
    instrumentId,
    happenedOn,
    kind,
    fromMidi: null,
    toMidi: null,
    remark: '',
  };
}

const spring = visitOn('2024-03-01');
const autumn = visitOn('2024-09-01');
const winter = visitOn('2025-01-15');

function figuresOf(...surveys: ReturnType<typeof surveyOf>[]) {
  return visitFigures(
    [spring, autumn, winter],
    surveys.map(({ survey }) => survey),
    surveys.flatMap(({ takes }) => takes),
  );
}

describe('visitFigures', () => {
  it('counts notes by stage and tells no survey from an empty one', () => {
    const [first, second] = figuresOf(surveyOf(spring, 'as-found', { 57: 0, 69: 0 }), surveyOf(autumn, 'as-left', {}));
    expect([first?.asFound?.noteCount, first?.asLeft, second?.asLeft?.noteCount]).toEqual([2, null, 0]);
  });
});

describe('changeIntervals', () => {
  it('run from an as-left to the next as-found', () => {
    const figures = figuresOf(
      surveyOf(spring, 'as-found', { 69: -9 }),
      surveyOf(spring, 'as-left', { 69: 0 }),
      surveyOf(autumn, 'as-found', { 69: 4 }),
    );
    const [interval, ...others] = changeIntervals(figures, []);
    expect(others).toEqual([]);
    expect(interval).toMatchObject({ fromVisit: spring, toVisit: autumn, fromStage: 'as-left' });
    expect(interval && intervalChange(interval).medianCents).toBeCloseTo(4, 6);
  });

  it('pass over a visit without an as-found survey', () => {
    const figures = figuresOf(surveyOf(spring, 'as-left', { 69: 0 }), surveyOf(winter, 'as-found', { 69: 1 }));
    expect(changeIntervals(figures, []).map(({ toVisit }) => toVisit)).toEqual([winter]);
  });

  it('start from an as-found where the piano was not tuned', () => {
    const figures = figuresOf(surveyOf(autumn, 'as-found', { 69: 3 }), surveyOf(winter, 'as-found', { 69: 1 }));
    const [interval] = changeIntervals(figures, []);
    expect(interval).toMatchObject({ fromVisit: autumn, toVisit: winter, fromStage: 'as-found' });
  });

  it('have no start where a tuning without a survey bears the date', () => {
    const figures = figuresOf(
      surveyOf(spring, 'as-left', { 69: 0 }),
      surveyOf(autumn, 'as-found', { 69: 3 }),
      surveyOf(winter, 'as-found', { 69: 1 }),
    );
    const intervals = changeIntervals(figures, [eventOn(autumn.visitedOn, 'tuned')]);
    expect(intervals.map(({ toVisit }) => toVisit)).toEqual([autumn]);
  });

  it('have no median where no string was read on both sides', () => {
    const figures = figuresOf(surveyOf(spring, 'as-left', { 57: 0 }), surveyOf(autumn, 'as-found', { 69: 0 }));
    const [interval] = changeIntervals(figures, []);
    expect(interval && intervalChange(interval)).toMatchObject({ medianCents: null, notes: [] });
  });
});

it('wireWorkWithin finds new wire after the first visit and up to the second, and nothing else', () => {
  const events = [
    eventOn(spring.visitedOn, 'restrung'),
    eventOn('2024-05-01', 'string-replaced'),
    eventOn('2024-05-02', 'moved'),
    eventOn(autumn.visitedOn, 'restrung'),
    eventOn('2024-09-02', 'restrung'),
  ];
  const found = wireWorkWithin({ fromVisit: spring, toVisit: autumn }, events);
  expect(found.map((event) => event.happenedOn)).toEqual(['2024-05-01', autumn.visitedOn]);
});

it('yearsBetween counts days, also over a leap day', () => {
  expect(yearsBetween('2020-01-01', '2024-01-01')).toBeCloseTo(4, 10);
});
