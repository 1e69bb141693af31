import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import type { Take } from '../../src/piano/instrument.ts';
import { countState } from '../../src/ui/noteState.ts';
import { surveyCells } from '../../src/ui/surveyCells.ts';
import { readingAt } from '../screens/plainReading.ts';

const COMPASS = { lowestMidi: 60, highestMidi: 62 };

function takeOf(midi: number, isKept: boolean, isUsable: boolean): Take {
  return {
    id: 't' as TakeId,
    surveyId: 's' as SurveyId,
    visitId: 'v' as VisitId,
    instrumentId: 'i' as InstrumentId,
    midi,
    stringPosition: 2,
    recordedAt: '2024-03-01T10:00:00Z',
    isKept,
    reading: readingAt(midi, 0, { faults: isUsable ? [] : ['too-quiet'] }),
  };
}
const statesOf = (takes: Take[], skipped: number[] = []) =>
  surveyCells(COMPASS, takes, skipped).map((cell) => cell.state);

describe('surveyCells', () => {
  it('gives every note of the compass, lowest first', () => {
    expect(surveyCells(COMPASS, []).map((cell) => cell.midi)).toEqual([60, 61, 62]);
  });

  it.each<[string, Take[], string]>([
    ['no take', [], 'missing'],
    ['a good kept take', [takeOf(60, true, true)], 'kept'],
    ['a faulty kept take', [takeOf(60, true, false)], 'doubtful'],
    ['a faulty take aside', [takeOf(60, false, false)], 'doubtful'],
    ['a good take aside', [takeOf(60, false, true)], 'missing'],
    ['a good kept take beside a faulty one', [takeOf(60, true, true), takeOf(60, false, false)], 'kept'],
    ['two strings, one of them faulty', [takeOf(60, true, true), takeOf(60, true, false)], 'doubtful'],
  ])('calls a note with %s %s', (_what, takes, state) => {
    expect(statesOf(takes)[0]).toBe(state);
  });

  it('calls a passed-over note skipped until it has a take', () => {
    expect(statesOf([takeOf(61, true, true)], [60, 61])).toEqual(['skipped', 'kept', 'missing']);
    expect(countState(surveyCells(COMPASS, [], [60]), 'skipped')).toBe(1);
  });
});
