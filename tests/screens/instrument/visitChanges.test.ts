import { describe, expect, it } from 'vitest';
import type { InstrumentEvent } from '../../../src/piano/instrument.ts';
import { visitChanges } from '../../../src/screens/instrument/visitChanges.ts';
import { autumn, eventOn, spring, surveyOf, winter } from './plainVisits.ts';

function changesOf(read: ReturnType<typeof surveyOf>[], events: readonly InstrumentEvent[] = []) {
  const surveys = read.map(({ survey }) => survey);
  return visitChanges(
    { visits: [spring, autumn, winter], surveys, events },
    read.flatMap(({ takes }) => takes),
  );
}

describe('visitChanges', () => {
  it('run from an as-left to the next as-found', () => {
    const [interval, ...others] = changesOf([
      surveyOf(spring, 'as-found', { 69: -9 }),
      surveyOf(spring, 'as-left', { 69: 0 }),
      surveyOf(autumn, 'as-found', { 69: 4 }),
    ]);
    expect(others).toEqual([]);
    expect(interval).toMatchObject({ fromVisit: spring, toVisit: autumn, fromStage: 'as-left' });
    expect(interval?.change.medianCents).toBeCloseTo(4, 6);
  });

  it('pass over a visit without an as-found survey, and a survey without a kept take', () => {
    const intervals = changesOf([
      surveyOf(spring, 'as-left', { 69: 0 }),
      surveyOf(autumn, 'as-found', {}),
      surveyOf(winter, 'as-found', { 69: 1 }),
    ]);
    expect(intervals.map(({ fromVisit, toVisit }) => [fromVisit, toVisit])).toEqual([[spring, winter]]);
  });

  it('start from an as-found where the piano was not tuned', () => {
    const [interval] = changesOf([surveyOf(autumn, 'as-found', { 69: 3 }), surveyOf(winter, 'as-found', { 69: 1 })]);
    expect(interval).toMatchObject({ fromVisit: autumn, toVisit: winter, fromStage: 'as-found' });
    expect(interval?.change.medianCents).toBeCloseTo(-2, 6);
  });

  it.each([
    ['bears the date of a visit', autumn.visitedOn],
    ['lies between two visits', '2024-11-11'],
  ])('have no start where a tuning without a survey %s', (_, tunedOn) => {
    const read = [
      surveyOf(spring, 'as-left', { 69: 0 }),
      surveyOf(autumn, 'as-found', { 69: 3 }),
      surveyOf(winter, 'as-found', { 69: 1 }),
    ];
    expect(changesOf(read, [eventOn(tunedOn, 'tuned')]).map(({ toVisit }) => toVisit)).toEqual([autumn]);
  });

  it('leave out a string that was made new in between, and say what was done', () => {
    const read = [surveyOf(spring, 'as-left', { 57: 0, 69: 0 }), surveyOf(autumn, 'as-found', { 57: -30, 69: 4 })];
    const events = [
      eventOn('2024-05-01', 'string-replaced', 57),
      eventOn('2024-05-02', 'moved'),
      eventOn('2024-09-02', 'string-replaced', 69),
    ];
    const [interval] = changesOf(read, events);
    expect(interval?.change.notes.map(({ midi }) => midi)).toEqual([69]);
    expect(interval?.work.map(({ happenedOn }) => happenedOn)).toEqual(['2024-05-01']);
  });

  it('compare a string that was not tuned with how it was found at that visit', () => {
    const left = surveyOf(spring, 'as-left', { 69: 0 });
    const intervals = changesOf([
      surveyOf(spring, 'as-found', { 57: -2, 69: -9 }),
      { ...left, survey: { ...left.survey, scope: { kind: 'chosen', notesMidi: [69] } } },
      surveyOf(autumn, 'as-found', { 57: -3, 69: 4 }),
    ]);
    expect(intervals[0]?.change.notes.map(({ midi, changeCents }) => [midi, Math.round(changeCents)])).toEqual([
      [57, -1],
      [69, 4],
    ]);
  });

  it('have no median where no string was read on both sides', () => {
    const [interval] = changesOf([surveyOf(spring, 'as-left', { 57: 0 }), surveyOf(autumn, 'as-found', { 69: 0 })]);
    expect(interval?.change).toMatchObject({ medianCents: null, notes: [] });
  });
});
