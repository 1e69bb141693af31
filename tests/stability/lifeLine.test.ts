import { describe, expect, it } from 'vitest';
import { NO_DETAIL } from '../../src/stability/drift/driftDetail.ts';
import type { HistoryReading } from '../../src/stability/drift/history.ts';
import { lifeLine } from '../../src/stability/lifeLine.ts';

const MIDIS = Array.from({ length: 61 }, (_, index) => 30 + index);

/** A piano stretched by 0.02 cents a semitone squared; every string this far from where it belongs. */
function survey(
  visitedOn: string,
  stage: HistoryReading['stage'],
  cents: number,
  humidityPct: number | null,
  midis = MIDIS,
) {
  return midis.map((midi): HistoryReading => {
    const place = 0.02 * (midi - 60) * Math.abs(midi - 60);
    return {
      visitedOn,
      stage,
      humidityPct,
      temperatureC: null,
      midi,
      stringPosition: 2,
      cents: place + cents,
      standardUncertaintyCents: 0.3,
    };
  });
}

const READINGS = [
  ...survey('2020-03-01', 'as-found', -8, 40),
  ...survey('2020-03-01', 'as-left', 0, 40),
  ...survey('2020-09-01', 'as-found', 10, 60, [85, 86, 87, 88, 89]),
];

describe('the life line', () => {
  it('tells where each visit found the piano and left it', () => {
    const [first] = lifeLine(READINGS, NO_DETAIL);
    expect(first?.asFound?.cents).toBeCloseTo(-8, 9);
    expect(first?.asLeft?.cents).toBeCloseTo(0, 9);
    expect(first?.humidityPct).toBe(40);
  });

  it('tells the same pitch from a few notes at the top as from all', () => {
    const second = lifeLine(READINGS, NO_DETAIL)[1];
    expect(second?.asFound?.cents).toBeCloseTo(10, 9);
    expect(second?.asFound?.stringCount).toBe(5);
    expect(second?.asLeft).toBeNull();
  });

  it('moves readings to one humidity where the strings’ answers are known', () => {
    const strings = MIDIS.map((midi) => ({
      midi,
      stringPosition: 2 as const,
      centsPerPct: 0.5,
      standardUncertainty: 0.1,
    }));
    const known = { ...NO_DETAIL, isHumidityKnown: true, strings };
    const [first, second] = lifeLine(READINGS, known, 50);
    expect(first?.asLeft?.cents).toBeCloseTo(5, 9);
    expect(second?.asFound?.cents).toBeCloseTo(5, 9);
    expect(lifeLine(READINGS, { ...known, isHumidityKnown: false }, 50)[0]?.asLeft).toBeNull();
  });

  it('is empty without readings', () => {
    expect(lifeLine([], NO_DETAIL)).toEqual([]);
  });
});
