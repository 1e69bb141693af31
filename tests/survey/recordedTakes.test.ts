import { describe, expect, it } from 'vitest';
import type { Take } from '../../src/piano/instrument.ts';
import { recordedTakes } from '../../src/survey/recordedTakes.ts';
import { takeId } from './plainReading.ts';
import { type Strike, struckReading } from './struckReading.ts';

function take(number: number, strike: Strike, isKept: boolean, surveyId = 'survey-1'): Take {
  const reading = struckReading(strike);
  const owner = { surveyId, visitId: 'visit-1', instrumentId: 'instrument-1' } as Pick<
    Take,
    'surveyId' | 'visitId' | 'instrumentId'
  >;
  const { midi, stringPosition } = reading;
  return { id: takeId(number), ...owner, midi, stringPosition, recordedAt: '2026-05-01T10:00:00Z', isKept, reading };
}

describe('recordedTakes', () => {
  it('gives each kept take the uncertainty that the other takes of its string support', () => {
    const takes = [take(1, { cents: 0 }, false), take(2, { cents: 0.4 }, true), take(3, { midi: 61, cents: 0 }, true)];
    const { kept } = recordedTakes(takes);
    expect(kept.map(({ id }) => id)).toEqual([takeId(2), takeId(3)]);
    expect(kept[0]?.reading.offsetStandardUncertaintyCents).toBeCloseTo(0.4 / Math.SQRT2, 12);
    expect(kept[1]).toEqual(takes[2]);
  });

  it('leaves the takes that it was given as measured', () => {
    const takes = [take(1, { cents: 0 }, false), take(2, { cents: 0.4 }, true)];
    recordedTakes(takes);
    expect(takes[1]?.reading).toEqual(struckReading({ cents: 0.4 }));
  });

  it('does not compare a string with another string, another note or another survey', () => {
    const kept = take(1, { cents: 0 }, true);
    const others = [
      { ...take(2, { cents: 1 }, false), stringPosition: 3 as const },
      take(3, { midi: 61, cents: 1 }, false),
      take(4, { cents: 1 }, false, 'survey-2'),
    ];
    expect(recordedTakes([kept, ...others]).kept).toEqual([kept]);
  });

  it('pools over the notes that were played again', () => {
    const takes = [60, 61, 62, 63].flatMap((midi, index) => [
      take(2 * index, { midi, cents: 0 }, true),
      take(2 * index + 1, { midi, cents: 0.2 }, false),
    ]);
    expect(recordedTakes(takes).pooledRepeatability[0]).toMatchObject({
      register: 'all',
      repeatCount: 4,
      noteCount: 4,
    });
  });
});
