import { describe, expect, it } from 'vitest';
import type { Drift } from '../../src/stability/drift/analyseDrift.ts';
import { changeBetweenVisits, driftMap, stringHistory } from '../../src/stability/driftViews.ts';

const interval = (fromDate: string, toDate: string, hasBaseline = true) => ({
  fromDate,
  toDate,
  years: 1,
  humidityChangePct: 10,
  hasBaseline,
  missingCount: 0,
  medianCents: null,
});

const change = (stringIndex: number, intervalIndex: number, ownCents: number, wholeCents = 5) => ({
  stringIndex,
  intervalIndex,
  cents: ownCents + wholeCents,
  wholeCents,
  ownCents,
  standardUncertaintyCents: 0.3,
  readingUncertaintyCents: 0.2,
});

const pin = (midi: number, centsPerYear: number) => ({
  midi,
  stringPosition: 2 as const,
  slip: { centsPerYear, standardUncertainty: 0.2, probability: 0.9 },
  isFlagged: false,
});

/** Two strings over three intervals; the second one was not read at the end of the second. */
const DRIFT: Drift = {
  intervals: [
    interval('2020-01-01', '2021-01-01'),
    interval('2021-01-01', '2022-01-01'),
    interval('2022-01-01', '2023-01-01'),
  ],
  humidity: [],
  settling: null,
  pins: [pin(60, -2), pin(61, 0)],
  zones: [],
  outliers: [],
  verdict: { state: 'watch', grounds: [], reasons: [], slipRuledOutAboveCentsPerYear: null },
  detail: {
    strings: [60, 61].map((midi) => ({ midi, stringPosition: 2, centsPerPct: 0.5, standardUncertainty: 0.1 })),
    changes: [change(0, 0, -2), change(0, 1, -2), change(0, 2, -2), change(1, 0, 1), change(1, 2, -1)],
    isHumidityKnown: true,
    seasonPct: [10, -10, 4],
    commonCents: [0, 0, 0],
  },
};

describe('the map of own drift', () => {
  it('adds up a string’s changes, and its uncertainties as independent ones', () => {
    const [first, second] = driftMap(DRIFT, 'added-up');
    expect(first?.cells.map((cell) => cell?.cents)).toEqual([-2, -4, -6]);
    expect(first?.cells[2]?.standardUncertaintyCents).toBeCloseTo(0.3 * Math.sqrt(3), 12);
    expect(second?.cells.map((cell) => cell?.cents ?? null)).toEqual([1, null, 0]);
  });

  it('or shows each interval by itself', () => {
    const [first] = driftMap(DRIFT, 'each-interval');
    expect(first?.cells.map((cell) => cell?.cents)).toEqual([-2, -2, -2]);
    expect(first?.cells[2]?.standardUncertaintyCents).toBeCloseTo(0.3, 12);
  });
});

describe('the change between two visits', () => {
  it('is the sum over the intervals between them, in its two parts', () => {
    const [only, ...others] = changeBetweenVisits(DRIFT, '2020-01-01', '2022-01-01');
    expect(others).toEqual([]);
    expect(only).toMatchObject({ midi: 60, cents: 6, wholeCents: 10, ownCents: -4, intervalCount: 2 });
  });

  it('is as sure of the whole instrument’s part as of the answer to the humidity that changed', () => {
    expect(changeBetweenVisits(DRIFT, '2020-01-01', '2021-01-01')[0]?.wholeUncertaintyCents).toBeCloseTo(1, 12);
    // Up ten and down ten: the answer does not matter.
    expect(changeBetweenVisits(DRIFT, '2020-01-01', '2022-01-01')[0]?.wholeUncertaintyCents).toBe(0);
  });
});

describe('one string’s years', () => {
  it('start at nought, and its slip’s line goes through their middle', () => {
    const history = stringHistory(DRIFT, { midi: 60, stringPosition: 2 });
    expect(history?.offsets.map(({ on, cents }) => [on, cents])).toEqual([
      ['2020-01-01', 0],
      ['2021-01-01', -2],
      ['2022-01-01', -4],
      ['2023-01-01', -6],
    ]);
    expect(history?.line?.map(({ cents }) => cents)).toEqual([0, -2, -4, -6]);
  });

  it('let no time pass where nobody could tell', () => {
    const line = stringHistory(DRIFT, { midi: 61, stringPosition: 2 })?.line;
    expect(line?.map(({ on }) => on)).toEqual(['2020-01-01', '2021-01-01', '2023-01-01']);
    expect(line?.at(-1)?.standardUncertaintyCents).toBeCloseTo(0.2, 12);
  });

  it('are not there for a string that was never compared', () => {
    expect(stringHistory(DRIFT, { midi: 62, stringPosition: 2 })).toBeNull();
  });
});
