import { describe, expect, it } from 'vitest';
import { simulateHistory } from '../../../src/stability/simulateHistory.ts';
import { type HistoryPlan, regularVisits, usualPlan } from '../../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../../support/seededRandom.ts';

/** Nothing moves and nothing is noisy, unless it is asked for. */
const STILL: Partial<HistoryPlan> = {
  responseFactor: 0,
  unisonSplitCentsPerPct: 0,
  temperatureCentsPerC: 0,
  driftCentsPerYear: 0,
  registerCents: 0,
  patchCents: 0,
  strayCents: 0,
  strayCentsPerRootYear: 0,
  tunerScatterCents: 0,
  readingNoiseCents: () => 0,
  missingNoteShare: 0,
};

function still(changes: Partial<HistoryPlan> = {}, seed = 1) {
  return simulateHistory(usualPlan({ ...STILL, ...changes }), seededRandom(seed));
}

/** As found less as left at the visit before, by visit. */
function changesOf({ readings }: ReturnType<typeof still>, midi: number): number[] {
  const own = readings.filter((reading) => reading.midi === midi);
  return own.flatMap(({ stage, cents }, index) => {
    const before = own[index - 1];
    return stage === 'as-found' && before ? [cents - before.cents] : [];
  });
}

describe('an invented history', () => {
  it('is the same for the same seed and another for another', () => {
    const history = (seed: number) => simulateHistory(usualPlan(), seededRandom(seed)).readings;
    expect(history(5)).toEqual(history(5));
    expect(history(5)).not.toEqual(history(6));
  });

  it('stands still where nothing moves it', () => {
    expect(changesOf(still(), 60).length).toBeGreaterThan(3);
    for (const change of changesOf(still(), 60)) expect(change).toBeCloseTo(0, 9);
  });

  it('lets a pin slip by what is planned, and says so in its truth', () => {
    const slips = [{ midi: 60, stringPosition: 2, centsPerYear: -2, fromDate: '2015-03-01' } as const];
    const history = still({ slips });
    // From 1 March 2015 to 1 March 2021.
    expect(changesOf(history, 60).reduce((sum, change) => sum + change, 0)).toBeCloseTo(-2 * 6, 1);
    expect(history.truth.strings.find(({ midi }) => midi === 60)?.slipCentsPerYear).toBeCloseTo(-2, 9);
    expect(changesOf(history, 61)[3]).toBeCloseTo(0, 9);
  });

  it('lets a zone fail faster each year', () => {
    const zone = { fromMidi: 60, toMidi: 65, firstCentsPerYear: -1, growthCentsPerYear2: -1, fromDate: '2017-03-01' };
    const changes = changesOf(still({ zone }), 62);
    expect(changes[2]).toBeCloseTo(0, 9);
    for (let k = 5; k < changes.length; k++) expect(changes[k]).toBeLessThan(changes[k - 1] ?? 0);
  });

  it('moves with the wood’s humidity, each string as it answers', () => {
    const history = still({ responseFactor: 1 });
    const wood = [...history.truth.woodHumidityPct.values()];
    const response = history.truth.strings.find(({ midi }) => midi === 60)?.responseCentsPerPct ?? 0;
    changesOf(history, 60).forEach((change, k) => {
      expect(change).toBeCloseTo(response * ((wood[k + 1] ?? 0) - (wood[k] ?? 0)), 9);
    });
  });

  it('makes readings as noisy as planned', () => {
    const history = still({ readingNoiseCents: () => 0.5, visits: regularVisits('2015-01-01', 9, 6) });
    const errors = [30, 50, 60, 70, 90].flatMap((midi) => changesOf(history, midi));
    const deviation = Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
    // 40 values: the deviation is known to 11 %.
    expect(Math.abs(deviation / (0.5 * Math.SQRT2) - 1)).toBeLessThan(0.3);
    expect(history.readings[0]?.standardUncertaintyCents).toBe(0.5);
  });

  it('keeps a mis-set note until the next tuning, a wrong take for its survey only', () => {
    const visits = regularVisits('2015-03-01', 7, 6);
    const [first, mis, next, wrong] = visits.map(({ on }) => on) as [string, string, string, string];
    const faults = [
      { on: mis, stage: 'as-left', midi: 60, stringPosition: 2, cents: 7 },
      { on: wrong, stage: 'as-found', midi: 61, stringPosition: 2, cents: -7 },
    ] as const;
    const { readings } = still({ faults, visits });
    const at = (on: string, stage: string, midi: number) =>
      readings.find((reading) => reading.visitedOn === on && reading.stage === stage && reading.midi === midi)?.cents ??
      0;
    const place = at(first, 'as-left', 60);
    expect(at(mis, 'as-left', 60) - place).toBeCloseTo(7, 9);
    expect(at(next, 'as-found', 60) - place).toBeCloseTo(7, 9);
    expect(at(next, 'as-left', 60) - place).toBeCloseTo(0, 9);
    expect(at(wrong, 'as-found', 61) - at(wrong, 'as-left', 61)).toBeCloseTo(-7, 9);
  });

  it('notes a tuning that no survey shows as an event', () => {
    const visits = regularVisits('2015-03-01', 3, 6).map((visit) => ({ ...visit, surveys: 'as-found' as const }));
    const { events, readings } = still({ visits });
    expect(events.map(({ kind, happenedOn }) => [kind, happenedOn])).toEqual(visits.map(({ on }) => ['tuned', on]));
    expect(readings.every(({ stage }) => stage === 'as-found')).toBe(true);
  });
});

it('simulateHistory refuses visits out of order and names the dates', () => {
  const visits = regularVisits('2015-03-01', 2, 6).reverse();
  expect(() => still({ visits })).toThrow(/2015-03-01 after/);
  expect(() => still({ visits: [] })).toThrow(/at least one visit/);
});
