import { describe, expect, it } from 'vitest';
import type { SurveyId, VisitId } from '../../../src/piano/ids.ts';
import type { Survey, Take, Visit } from '../../../src/piano/instrument.ts';
import type { PartialReading } from '../../../src/piano/reading.ts';
import { partialToShow, sharedPartials } from '../../../src/screens/hearing/beatPartial.ts';
import { hearableStrings } from '../../../src/screens/hearing/hearableNotes.ts';
import { exampleReading } from '../../records/exampleRecords.ts';

const DATES = ['2016-05-01', '2020-05-01', '2026-05-01'];
const visits = DATES.map((visitedOn) => ({ id: visitedOn as VisitId, visitedOn }) as Visit);
const surveys = DATES.map((date) => ({ id: date as SurveyId, visitId: date as VisitId, startedAt: date }) as Survey);

function take(date: string, midi: number, stringPosition: Take['stringPosition'], rateHz: number | null = null): Take {
  const reading = exampleReading({ midi, stringPosition });
  const beating = { ...reading.beating, rateHz };
  return {
    id: `${date} ${midi} ${stringPosition}`,
    surveyId: date,
    visitId: date,
    midi,
    stringPosition,
    reading: { ...reading, beating },
  } as unknown as Take;
}

describe('hearableStrings', () => {
  it('offers strings with two sounds or more, from the lowest up, their sounds oldest first', () => {
    const takes = [
      take(DATES[2]!, 72, 1),
      take(DATES[0]!, 72, 1),
      take(DATES[1]!, 60, 2),
      take(DATES[0]!, 60, 2, 0.7),
      take(DATES[0]!, 61, 2),
    ];
    const strings = hearableStrings(takes, surveys, visits);
    expect(
      strings.map(({ midi, sounds, isBeating }) => [midi, sounds.map(({ visit }) => visit.visitedOn), isBeating]),
    ).toEqual([
      [60, [DATES[0], DATES[1]], true],
      [72, [DATES[0], DATES[2]], false],
    ]);
  });

  it('compares a unison with a unison and a string with the same string only', () => {
    expect(
      hearableStrings([take(DATES[0]!, 60, 0), take(DATES[1]!, 60, 2), take(DATES[2]!, 60, 1)], surveys, visits),
    ).toEqual([]);
  });

  it('passes over takes whose survey is not there', () => {
    expect(hearableStrings([take('1999-01-01', 60, 2), take(DATES[1]!, 60, 2)], surveys, visits)).toEqual([]);
  });
});

describe('the partial to draw', () => {
  const partial = (partialNumber: number, levelDbfs: number) => ({ partialNumber, levelDbfs }) as PartialReading;
  const reading = (partials: readonly PartialReading[], partialNumbers: readonly number[]) =>
    exampleReading({ partials, beating: { kind: 'false beat', rateHz: 1, depthDb: 3, partialNumbers, reason: '' } });

  it('is the loudest that beats in either reading', () => {
    const one = reading([partial(1, -10), partial(2, -20), partial(3, -15)], [2]);
    const other = reading([partial(1, -10), partial(2, -20), partial(3, -30)], [3]);
    expect(partialToShow(sharedPartials(one, other))?.partialNumber).toBe(2);
  });

  it('is the loudest of all where none beats, and none where the readings share none', () => {
    const one = reading([partial(1, -20), partial(2, -12), partial(4, -3)], []);
    const other = reading([partial(1, -20), partial(2, -14), partial(5, -3)], []);
    expect(partialToShow(sharedPartials(one, other))?.partialNumber).toBe(2);
    expect(partialToShow(sharedPartials(one, reading([partial(9, 0)], [])))).toBeUndefined();
  });
});
