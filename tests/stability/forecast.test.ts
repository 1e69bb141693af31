import { describe, expect, it } from 'vitest';
import { type ForecastRequest, forecastOf, forecastOn } from '../../src/stability/forecast.ts';
import { addDays, roomClimate } from '../../src/stability/forecastClimate.ts';

/** Ten years of a room of 50 ± 10 %RH, driest on 15 February, read four times a year without error. */
const STEADY_ROOM = Array.from({ length: 40 }, (_, index) => {
  const visitedOn = addDays('2010-02-15', Math.round(index * 91.3125));
  return { visitedOn, humidityPct: 50 - 10 * Math.cos((2 * Math.PI * index) / 4) };
});

function request(changes: Partial<ForecastRequest> = {}): ForecastRequest {
  return {
    strings: Array.from({ length: 20 }, () => ({
      centsPerPct: 0.5,
      responseUncertainty: 0,
      slipCentsPerYear: 0,
      slipUncertainty: 0,
    })),
    leftOn: '2020-02-15',
    leftHumidityPct: 40,
    climate: roomClimate(STEADY_ROOM),
    common: { centsPerYear: 0, standardUncertainty: 0, scatterCents: 0 },
    strayCentsPerRootYear: 0,
    limitCents: 5,
    ...changes,
  };
}

const HALF_YEAR_ON = '2020-08-15';

describe('the climate of a room', () => {
  it('is read from a record that shows the year', () => {
    const climate = roomClimate(STEADY_ROOM);
    expect(climate.basis).toBe('record');
    // Within the uncertainty that it states itself.
    expect(Math.abs(climate.swingPct - 10)).toBeLessThan(2 * climate.swingUncertaintyPct);
    expect(Math.abs(climate.on('2021-02-15').humidityPct - 40)).toBeLessThan(1);
    expect(climate.nextTurn('2020-03-01').kind).toBe('dampest');
    expect(
      Math.abs(Date.parse(climate.nextTurn('2020-03-01').on) - Date.parse('2020-08-16')) / 86_400_000,
    ).toBeLessThan(6);
  });

  it('is an assumption, and said to be one, where the record does not show the year', () => {
    const climate = roomClimate([{ visitedOn: '2020-06-01', humidityPct: 52 }]);
    expect(climate.basis).toBe('assumption');
    expect(climate.swingUncertaintyPct).toBeGreaterThan(4);
  });

  it('turns for the next dry time after the damp one', () => {
    const climate = roomClimate(STEADY_ROOM);
    const damp = climate.nextTurn('2020-03-01').on;
    expect(climate.nextTurn(damp).kind).toBe('driest');
  });
});

describe('the forecast', () => {
  it('is the season times the strings’ answer to it', () => {
    // Left at the driest, half a year later 20 %RH damper: 10 cents at 0.5 cents per %RH. Tolerance: the fit leans on its assumption by 2 %.
    expect(forecastOn(HALF_YEAR_ON, request()).medianCents).toBeGreaterThan(9.4);
    expect(forecastOn(HALF_YEAR_ON, request()).medianCents).toBeLessThan(10.6);
    expect(Math.abs(forecastOn('2021-02-14', request()).medianCents)).toBeLessThan(0.5);
  });

  it('says when the limit is passed, early and late about the expected day', () => {
    const { due } = forecastOf(request());
    // 5 cents are 10 %RH: a quarter of a year after the driest time, to within a linear step of a month.
    expect(Math.abs(Date.parse(due.expectedOn ?? '') - Date.parse('2020-05-16')) / 86_400_000).toBeLessThan(12);
    expect((due.earliestOn ?? '') <= (due.expectedOn ?? '')).toBe(true);
    expect(due.latestOn === null || due.latestOn >= (due.expectedOn ?? '')).toBe(true);
  });

  it('names no day where nothing moves', () => {
    const still = { centsPerPct: 0, responseUncertainty: 0, slipCentsPerYear: 0, slipUncertainty: 0 };
    expect(forecastOf(request({ strings: [still] })).due).toEqual({
      earliestOn: null,
      expectedOn: null,
      latestOn: null,
    });
  });

  it('counts slips, the common course and stray movement', () => {
    const still = { centsPerPct: 0, responseUncertainty: 0, slipUncertainty: 0 };
    const slipping = request({ strings: [{ ...still, slipCentsPerYear: -6 }] });
    expect(forecastOn(HALF_YEAR_ON, slipping).rmsCents.expected).toBeCloseTo(6 * (182 / 365.25), 2);
    const settling = request({
      strings: [{ ...still, slipCentsPerYear: 0 }],
      common: { centsPerYear: -8, standardUncertainty: 0, scatterCents: 0 },
    });
    expect(forecastOn(HALF_YEAR_ON, settling).medianCents).toBeCloseTo(-8 * (182 / 365.25), 2);
    const straying = request({ strings: [{ ...still, slipCentsPerYear: 0 }], strayCentsPerRootYear: 2 });
    expect(forecastOn('2021-02-14', straying).rmsCents.expected).toBeCloseTo(2, 2);
  });

  it('is the less sure the less is known', () => {
    const spread = (one: ForecastRequest) => {
      const { low, high } = forecastOn(HALF_YEAR_ON, one).rmsCents;
      return high - low;
    };
    const unknownRoom = roomClimate([{ visitedOn: '2020-02-15', humidityPct: 40 }]);
    expect(spread(request({ climate: unknownRoom }))).toBeGreaterThan(2 * spread(request()));
  });

  it('refuses an instrument without strings', () => {
    expect(() => forecastOf(request({ strings: [] }))).toThrow(/strings/);
  });
});
