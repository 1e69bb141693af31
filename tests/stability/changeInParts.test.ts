import { expect, it } from 'vitest';
import { changeInParts, mostSeasonalInterval } from '../../src/stability/changeInParts.ts';
import { analyseDrift } from '../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../src/stability/drift/seededNormal.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { regularVisits, usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../support/seededRandom.ts';

const plan = usualPlan({ visits: regularVisits('2019-02-01', 5, 6), missingNoteShare: 0 });
const { readings, events } = simulateHistory(plan, seededRandom(3));
const { compass, bassBridgeTopMidi, strutsAfterMidi } = plan;
const drift = analyseDrift({
  readings,
  events,
  instrument: { compass, bassBridgeTopMidi, strutsAfterMidi },
  thresholdCentsPerYear: 1,
  random: seededNormal(1),
});

it('splits each string’s change of an interval into two parts that make it up, in the order of the notes', () => {
  const parts = changeInParts(drift, 1);
  expect(parts.map(({ midi }) => midi)).toEqual(Array.from({ length: 88 }, (_, index) => 21 + index));
  const cents = (on: string, stage: string, midi: number) =>
    readings.find((row) => row.visitedOn === on && row.stage === stage && row.midi === midi)?.cents ?? Number.NaN;
  const interval = drift.intervals[1];
  for (const part of parts) {
    const read =
      cents(interval?.toDate ?? '', 'as-found', part.midi) - cents(interval?.fromDate ?? '', 'as-left', part.midi);
    expect(part.cents).toBeCloseTo(read, 9);
    expect(part.wholeCents + part.ownCents).toBeCloseTo(part.cents, 9);
    expect(part.standardUncertaintyCents).toBeGreaterThan(0);
  }
});

it('has nothing of an interval that there is not', () => {
  expect(changeInParts(drift, 9)).toEqual([]);
  expect(mostSeasonalInterval({ ...drift, intervals: [] }, 3)).toBe(-1);
});

it('takes the interval over which humidity changed most, among the last', () => {
  const detail = { ...drift.detail, seasonPct: [20, -3, 8, -12] };
  expect(mostSeasonalInterval({ ...drift, detail }, 4)).toBe(0);
  expect(mostSeasonalInterval({ ...drift, detail }, 3)).toBe(3);
});
