import { describe, expect, it } from 'vitest';
import { analyseDrift } from '../../../src/stability/drift/analyseDrift.ts';
import type { HistoryReading } from '../../../src/stability/drift/history.ts';
import { seededNormal } from '../../../src/stability/drift/seededNormal.ts';
import { fitSettling } from '../../../src/stability/drift/settling.ts';
import { seededRandom } from '../../support/seededRandom.ts';

/** Visits half a year apart, with no retuning between them: a table worked out by hand from 0.8 cents per %RH. */
const HUMIDITIES_PCT = [42, 50, 38, 46, 42];
const LEFT_CENTS = [0, 6.4, -3.2, 3.2, 0];
const RIGHT_CENTS = [0, 6.4, -4.7, 0.2, -4.5];
const DATES = ['2020-01-01', '2020-07-01', '2021-01-01', '2021-07-01', '2022-01-01'];

function handWorkedReadings(): HistoryReading[] {
  const random = seededRandom(3);
  return DATES.flatMap((visitedOn, visit) =>
    Array.from({ length: 37 }, (_, note) => 48 + note).flatMap((midi) =>
      ([1, 3] as const).map((stringPosition) => {
        const slips = midi === 69 && stringPosition === 3;
        const moved = (slips ? RIGHT_CENTS : LEFT_CENTS)[visit] ?? 0;
        // The other notes answer more below, less above (trade practice).
        const share = 2 ** ((69 - midi) / 20);
        return {
          visitedOn,
          stage: visit === 0 ? ('as-left' as const) : ('as-found' as const),
          humidityPct: HUMIDITIES_PCT[visit] ?? null,
          temperatureC: 20,
          midi,
          stringPosition,
          cents: share * moved + 0.1 * random.normal(),
          standardUncertaintyCents: 0.1,
        };
      }),
    ),
  );
}

describe('a piano whose A4 answers 0.8 cents per %RH, and whose right string there falls by 1.5 cents a visit from the second on', () => {
  const drift = analyseDrift({
    readings: handWorkedReadings(),
    events: [],
    instrument: { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [] },
    thresholdCentsPerYear: 1,
    random: seededNormal(1),
  });
  const slipOf = (stringPosition: number) =>
    drift.pins.find((pin) => pin.midi === 69 && pin.stringPosition === stringPosition)?.slip;

  it('answers humidity by as much as an A4 may', () => {
    const response = drift.humidity.find(({ midi }) => midi === 69)?.centsPerPct ?? 0;
    // Four intervals hardly tell a season from a common course; practitioners' records lie between 0.2 and 1.5 (trade practice).
    expect(response).toBeGreaterThan(0.2);
    expect(response).toBeLessThan(1.5);
  });

  it('says that the left string only answers humidity', () => {
    expect(Math.abs(slipOf(1)?.centsPerYear ?? 9)).toBeLessThan(0.3);
  });

  it('says that the right one falls', () => {
    const slip = slipOf(3)?.centsPerYear ?? 0;
    // Between 4.5 cents in two years and the 1.5 a visit at which it falls once it does; 0.2 for what is common.
    expect(slip).toBeLessThan(-2.25 + 0.2);
    expect(slip).toBeGreaterThan(-3 - 0.2);
  });
});

describe('a restrung piano that falls by 8, 4, 2 and 1 cents from visit to visit', () => {
  const falls = [-8, -4, -2, -1];
  const intervals = falls.map((_, k) => ({
    fromDate: `2020-0${1 + 2 * k}-01`,
    toDate: `2020-0${3 + 2 * k}-01`,
    years: 1 / 6,
    humidityChangePct: 0,
    hasBaseline: true,
    missingCount: 0,
  }));
  const restrung = [{ happenedOn: '2020-01-01', kind: 'restrung', fromMidi: null, toMidi: null } as const];
  const settling = fitSettling(intervals, Float64Array.from(falls), restrung);

  it('settles', () => {
    // Halving every two months: 15 cents in eight, and 16 in all.
    expect(settling?.firstYearCents).toBeGreaterThan(-18);
    expect(settling?.firstYearCents).toBeLessThan(-14);
    expect(Math.abs(settling?.remainingCentsPerYear ?? -99)).toBeLessThan(4);
  });

  it('is not said to settle where nobody noted new wire', () => {
    expect(fitSettling(intervals, Float64Array.from(falls), [])).toBeNull();
  });
});
