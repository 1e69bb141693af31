import { describe, expect, it } from 'vitest';
import { analyseDrift, type Drift } from '../../../src/stability/drift/analyseDrift.ts';
import type { HistoryEvent, HistoryReading } from '../../../src/stability/drift/history.ts';
import { seededNormal } from '../../../src/stability/drift/seededNormal.ts';
import { simulateHistory } from '../../../src/stability/simulateHistory.ts';
import {
  asStrung,
  type HistoryPlan,
  regularVisits,
  USUAL_CLIMATE,
  usualPlan,
} from '../../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../../support/seededRandom.ts';

function judge(readings: readonly HistoryReading[], events: readonly HistoryEvent[] = []): Drift {
  const instrument = { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [43, 71] };
  return analyseDrift({ readings, events, instrument, thresholdCentsPerYear: 1, random: seededNormal(1) });
}

function judgePlan(changes: Partial<HistoryPlan>, seed: number): Drift {
  const { readings, events } = simulateHistory(usualPlan(changes), seededRandom(seed));
  return judge(readings, events);
}

const flaggedIn = (drift: Drift) => drift.pins.filter((pin) => pin.isFlagged).map((pin) => pin.midi);

describe('a piano that holds', () => {
  it.each([1, 2, 3])('is said to hold, though the season moves it by ten cents and more (seed %i)', (seed) => {
    const drift = judgePlan({ climate: { ...USUAL_CLIMATE, swingPct: 15 } }, seed);
    expect(Math.max(...drift.intervals.map(({ medianCents }) => Math.abs(medianCents ?? 0)))).toBeGreaterThan(8);
    expect(flaggedIn(drift)).toEqual([]);
    expect(drift.zones).toEqual([]);
    expect(drift.verdict.state).toBe('holding');
  });

  it('gives back how its strings answer humidity', () => {
    const plan = usualPlan({ climate: { ...USUAL_CLIMATE, lagDays: 1 }, visits: regularVisits('2012-03-01', 21, 6) });
    const { readings, truth } = simulateHistory(plan, seededRandom(15));
    const { humidity } = judge(readings);
    for (const midi of [60, 69, 76]) {
      const found = humidity.find((response) => response.midi === midi)?.centsPerPct ?? 0;
      const response = truth.strings.find((string) => string.midi === midi)?.responseCentsPerPct ?? 0;
      // A fifth: what stands on a hygrometer on the day is not what the wood has come to.
      expect(Math.abs(found / response - 1)).toBeLessThan(0.2);
    }
  });

  it('is not blamed for unisons that the season splits', () => {
    // The left strings 10 cents flat and the right 15 sharp for +24 %RH, and back: trade practice.
    const split = { stringsOf: asStrung(43), unisonSplitCentsPerPct: 0.5, visits: regularVisits('2015-03-01', 9, 6) };
    const drift = judgePlan(split, 4);
    const spread = drift.pins.filter(({ midi }) => midi === 72).map(({ slip }) => slip.centsPerYear ?? 0);
    expect(flaggedIn(drift)).toEqual([]);
    expect(Math.max(...spread) - Math.min(...spread)).toBeLessThan(2);
  });

  it('keeps its few strings that went two or three cents off, others each time', () => {
    expect(flaggedIn(judgePlan({ largeStrayShare: 0.1, strayCents: 0.8 }, 5))).toEqual([]);
  });
});

describe('a pin that slips', () => {
  const slip = { midi: 72, stringPosition: 2, centsPerYear: -3, fromDate: '2015-03-01' } as const;

  it('is flagged alone, with a rate that the truth lies in', () => {
    const drift = judgePlan({ slips: [slip] }, 6);
    expect(flaggedIn(drift)).toEqual([72]);
    const found = drift.pins.find(({ midi }) => midi === 72)?.slip;
    expect(Math.abs((found?.centsPerYear ?? 0) + 3)).toBeLessThan(3 * (found?.standardUncertainty ?? 0));
    expect(drift.verdict.state).toBe('giving way');
    expect(drift.verdict.reasons[0]).toMatch(/C5/);
  });

  it('starts anew when it is replaced', () => {
    const replaced = { happenedOn: '2018-04-01', kind: 'pin-replaced', fromMidi: 72, toMidi: 72 } as const;
    const slips = [slip, { ...slip, centsPerYear: 3, fromDate: '2018-04-01' }];
    const drift = judgePlan({ slips, otherEvents: [replaced] }, 6);
    expect(flaggedIn(drift)).toEqual([]);
  });

  it('is found as well where nobody read the humidity', () => {
    expect(flaggedIn(judgePlan({ slips: [slip], climate: { ...USUAL_CLIMATE, unnotedShare: 1 } }, 7))).toEqual([72]);
  });
});

describe('a zone that fails', () => {
  it('is found with its borders and its growth', () => {
    const zone = { fromMidi: 72, toMidi: 83, firstCentsPerYear: -1, growthCentsPerYear2: -0.5, fromDate: '2017-03-01' };
    const drift = judgePlan({ zone }, 8);
    expect(drift.zones).toHaveLength(1);
    const [found] = drift.zones;
    expect(Math.abs((found?.fromMidi ?? 0) - 72)).toBeLessThanOrEqual(2);
    expect(Math.abs((found?.toMidi ?? 0) - 83)).toBeLessThanOrEqual(2);
    expect(found?.isAccelerating).toBe(true);
    expect(drift.verdict.state).toBe('giving way');
  });

  it('is found at the flange where three pins of one unison each give way', () => {
    // Keys 18 to 20 (D2 to E2), −6, −11, −17 cents: trade practice, as −6 cents more at each visit.
    const slips = [38, 39, 40].flatMap((midi) =>
      ([1, 2] as const).map((stringPosition) => ({ midi, stringPosition, centsPerYear: -11, fromDate: '2015-03-01' })),
    );
    const drift = judgePlan({ slips, stringsOf: asStrung(43), visits: regularVisits('2015-03-01', 7, 6) }, 9);
    expect([...new Set(flaggedIn(drift))]).toEqual([38, 39, 40]);
  });
});

describe('a reading that is wrong', () => {
  it.each(['as-left', 'as-found'] as const)('%s is an outlier and no slip', (stage) => {
    const fault = { on: '2017-03-01', stage, midi: 65, stringPosition: 2, cents: -10 } as const;
    const drift = judgePlan({ faults: [fault] }, 10);
    expect(flaggedIn(drift)).toEqual([]);
    expect(drift.outliers.map(({ midi, visitedOn }) => ({ midi, visitedOn }))).toContainEqual({
      midi: 65,
      visitedOn: '2017-03-01',
    });
  });
});

describe('new wire', () => {
  it('settles and slips nowhere', () => {
    const settling = { restrungOn: '2015-02-01', totalCents: 15, timeConstantYears: 0.5 };
    const drift = judgePlan({ settling, visits: regularVisits('2015-03-01', 9, 4) }, 11);
    expect(flaggedIn(drift)).toEqual([]);
    expect(drift.settling?.since).toBe('2015-02-01');
    expect(drift.settling?.firstYearCents).toBeLessThan(-6);
    expect(Math.abs(drift.settling?.remainingCentsPerYear ?? -9)).toBeLessThan(2);
  });
});

it('a string that settles much further than the others in its first year is no slip', () => {
  const settling = { restrungOn: '2015-02-01', totalCents: 15, timeConstantYears: 0.5 };
  const own = { midi: 72, stringPosition: 2 } as const;
  const slips = [
    { ...own, centsPerYear: -15, fromDate: '2015-02-01' },
    { ...own, centsPerYear: 15, fromDate: '2016-01-20' },
  ];
  const visits = [...regularVisits('2015-02-15', 5, 2.5), ...regularVisits('2016-03-01', 4, 6)];
  expect(flaggedIn(judgePlan({ settling, slips, visits }, 16))).toEqual([]);
});

describe('a record that cannot tell', () => {
  it('says so where no as-left survey came before', () => {
    const visits = regularVisits('2015-03-01', 7, 6).map((visit) => ({ ...visit, surveys: 'as-found' as const }));
    const drift = judgePlan({ visits }, 12);
    expect(drift.verdict.state).toBe('not enough evidence');
    expect(drift.intervals.every(({ medianCents }) => medianCents === null)).toBe(true);
    expect(drift.outliers).toEqual([]);
  });

  it('says so where only one note was ever read', () => {
    const { readings } = simulateHistory(usualPlan(), seededRandom(13));
    const { verdict } = judge(readings.filter(({ midi }) => midi === 69));
    expect(verdict.state).toBe('not enough evidence');
    expect(verdict.reasons[0]).toMatch(/1 note is too few/);
  });

  it('says so after two visits', () => {
    expect(judgePlan({ visits: regularVisits('2015-03-01', 2, 6) }, 13).verdict.state).toBe('not enough evidence');
  });

  it('says so of no readings at all', () => {
    const drift = judge([]);
    expect(drift.verdict.state).toBe('not enough evidence');
    expect(drift.pins).toEqual([]);
  });
});

it('a fast slip shows even where most tunings were not surveyed', () => {
  const slips = [{ midi: 72, stringPosition: 2, centsPerYear: -4, fromDate: '2015-03-01' } as const];
  const visits = regularVisits('2015-03-01', 13, 6).map((visit, index) =>
    index % 3 === 0 ? visit : { ...visit, surveys: 'as-found' as const },
  );
  expect(flaggedIn(judgePlan({ slips, visits }, 14))).toContain(72);
});
