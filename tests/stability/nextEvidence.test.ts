import { describe, expect, it } from 'vitest';
import { analyseDrift, type Drift } from '../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../src/stability/drift/seededNormal.ts';
import { fastestPossibleSlip, nextEvidence, slipCertainty } from '../../src/stability/nextEvidence.ts';

const NOTHING = analyseDrift({
  readings: [],
  events: [],
  instrument: { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] },
  thresholdCentsPerYear: 1,
  random: seededNormal(1),
});

function drift(intervalCount: number, years: number, changes: Partial<Drift> = {}): Drift {
  const intervals = Array.from({ length: intervalCount }, () => ({
    fromDate: '2020-01-01',
    toDate: '2021-01-01',
    years,
    humidityChangePct: 1,
    hasBaseline: true,
    missingCount: 0,
    medianCents: null,
  }));
  return { ...NOTHING, detail: { ...NOTHING.detail, isHumidityKnown: true }, intervals, ...changes };
}

const pin = (midi: number, probability: number, isFlagged = false) => ({
  midi,
  stringPosition: 2 as const,
  slip: { centsPerYear: -1, standardUncertainty: 0.5, probability },
  isFlagged,
});

const ruledOut = (slipRuledOutAboveCentsPerYear: number | null) => ({
  verdict: { state: 'not enough evidence' as const, grounds: [], reasons: [], slipRuledOutAboveCentsPerYear },
});

describe('what would settle it', () => {
  it('is both surveys, where no interval can be compared', () => {
    expect(nextEvidence(NOTHING, 1)).toEqual([{ kind: 'both-surveys' }]);
  });

  it('is more visits, then more time', () => {
    expect(nextEvidence(drift(1, 0.5), 1)).toEqual([{ kind: 'more-intervals', visitCount: 2 }]);
    expect(nextEvidence(drift(3, 0.1), 1)).toEqual([{ kind: 'more-time', months: 6 }]);
  });

  it('is as many visits more as narrow the slip to what matters', () => {
    // Twice too wide: four times the evidence, that is three times as many intervals again.
    expect(nextEvidence(drift(4, 0.5, ruledOut(2)), 1)).toEqual([{ kind: 'narrow', visitCount: 12, monthsApart: 6 }]);
    expect(nextEvidence(drift(4, 0.5, ruledOut(9)), 1)).toEqual([{ kind: 'narrow', visitCount: null, monthsApart: 6 }]);
    expect(nextEvidence(drift(4, 0.5, ruledOut(0.9)), 1)).toEqual([]);
  });

  it('is a torque reading on the pins in question, the flagged ones first', () => {
    const pins = [pin(60, 0.1), pin(61, 0.5), pin(62, 0.99, true)];
    const [torque] = nextEvidence(drift(4, 0.5, { ...ruledOut(0.9), pins }), 1);
    expect(torque).toMatchObject({ kind: 'torque', isFlagged: true });
    expect(torque?.kind === 'torque' && torque.pins.map(({ midi }) => midi)).toEqual([62, 61]);
  });

  it('is the humidity, where it was not noted', () => {
    const steps = nextEvidence(drift(4, 0.5, { ...ruledOut(0.9), detail: NOTHING.detail }), 1);
    expect(steps).toEqual([{ kind: 'note-humidity' }]);
  });
});

it('certainty is that of at least one of the pins named', () => {
  expect(slipCertainty({ zones: [], pins: [pin(60, 0.9, true), pin(61, 0.8, true), pin(62, 0.5)] })).toBeCloseTo(
    0.98,
    12,
  );
  expect(slipCertainty({ zones: [], pins: [pin(60, 0.4)] })).toBeNull();
});

it('the fastest possible slip is the one-sided 95 % limit, and never a rise', () => {
  expect(fastestPossibleSlip({ centsPerYear: -1, standardUncertainty: 0.5, probability: 0 })).toBeCloseTo(-1.8225, 9);
  expect(fastestPossibleSlip({ centsPerYear: 3, standardUncertainty: 0.5, probability: 0 })).toBe(0);
  expect(fastestPossibleSlip({ centsPerYear: null, standardUncertainty: null, probability: null })).toBeNull();
});
