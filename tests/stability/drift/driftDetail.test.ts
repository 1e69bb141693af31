import { describe, expect, it } from 'vitest';
import { analyseDrift } from '../../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../../src/stability/drift/seededNormal.ts';
import { simulateHistory } from '../../../src/stability/simulateHistory.ts';
import { usualPlan } from '../../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const SLIP = { midi: 72, stringPosition: 2, centsPerYear: -3, fromDate: '2015-03-01' } as const;

function judge() {
  const { readings, events } = simulateHistory(usualPlan({ slips: [SLIP] }), seededRandom(3));
  const instrument = { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [] };
  return analyseDrift({ readings, events, instrument, thresholdCentsPerYear: 1, random: seededNormal(1) });
}

describe('the workings of a judgement', () => {
  const { detail, intervals } = judge();

  it('split each change into what the instrument did and what the string did', () => {
    expect(detail.changes.length).toBeGreaterThan(900);
    for (const { cents, wholeCents, ownCents } of detail.changes) expect(wholeCents + ownCents).toBeCloseTo(cents, 9);
  });

  it('show the slip of a pin in its own changes and not in its neighbours’', () => {
    const total = (midi: number) =>
      detail.changes
        .filter((change) => detail.strings[change.stringIndex]?.midi === midi)
        .reduce((sum, change) => sum + change.ownCents, 0);
    const years = intervals.reduce((sum, interval) => sum + interval.years, 0);
    // Tolerance: six years of stray movement and reading noise, 12 changes of about 0.7 cents, and what is common.
    expect(Math.abs(total(72) / years - SLIP.centsPerYear)).toBeLessThan(0.8);
    expect(Math.abs(total(74) / years)).toBeLessThan(0.8);
  });

  it('give the movement of humidity back in %RH', () => {
    intervals.forEach((interval, k) => {
      expect(Math.abs((detail.seasonPct[k] ?? 0) - (interval.humidityChangePct ?? 0))).toBeLessThan(9);
    });
  });
});

it('there are no workings where there is no reading', () => {
  const instrument = { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] };
  const none = { readings: [], events: [], instrument, thresholdCentsPerYear: 1, random: seededNormal(1) };
  expect(analyseDrift(none).detail.changes).toEqual([]);
});
