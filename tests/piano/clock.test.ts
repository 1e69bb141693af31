import { describe, expect, it } from 'vitest';
import {
  type ClockReference,
  clockOffset,
  isOffsetTold,
  ppmToCents,
  referenceFrequency,
} from '../../src/piano/clock.ts';
import { formatPpm, formatPpmAsCents } from '../../src/piano/formatClock.ts';

const tone: ClockReference = {
  kind: 'tone',
  statedHz: 440,
  statedStandardUncertaintyHz: 0.001,
  statedAtC: null,
  temperatureC: null,
};
const fork: ClockReference = {
  ...tone,
  kind: 'fork',
  statedStandardUncertaintyHz: 0.02,
  statedAtC: 20,
  temperatureC: 26,
};

describe('referenceFrequency', () => {
  it('is what is stated for a tone', () => {
    expect(referenceFrequency(tone)).toEqual({ hz: 440, standardUncertaintyHz: 0.001 });
  });

  it('is lower for a warm fork, by 0.011 % a degree, and no surer than its warmth', () => {
    const { hz, standardUncertaintyHz } = referenceFrequency(fork);
    expect(hz).toBeCloseTo(440 - 440 * 6 * 1.1e-4, 9);
    expect(standardUncertaintyHz).toBeCloseTo(Math.hypot(0.02, 440 * 1.1e-4), 9);
  });
});

describe('clockOffset', () => {
  it('is above zero where the tone reads flat: the clock counts too many samples', () => {
    const offset = clockOffset({ hz: 440, standardUncertaintyHz: 0.0044 }, { hz: 439.956, standardUncertaintyHz: 0 });
    expect(offset.offsetPpm).toBeCloseTo(100.01, 2);
    expect(offset.offsetStandardUncertaintyPpm).toBeCloseTo(10, 9);
  });
});

it.each([
  [60, 20, true],
  [-60, 20, true],
  [60, 31, false],
])('tells an offset of %d ± %d ppm from none: %s', (offsetPpm, offsetStandardUncertaintyPpm, isTold) => {
  expect(isOffsetTold({ offsetPpm, offsetStandardUncertaintyPpm })).toBe(isTold);
});

it('says 100 ppm as 0.17 cents', () => {
  expect(ppmToCents(100)).toBeCloseTo(0.1731, 4);
  expect(formatPpmAsCents(-100)).toBe('0.17 cents');
});

it.each([
  [{ offsetPpm: -23.4, offsetStandardUncertaintyPpm: 3.2 }, '23 ± 3 ppm'],
  [{ offsetPpm: 8.26, offsetStandardUncertaintyPpm: 0.31 }, '8.3 ± 0.3 ppm'],
  [{ offsetPpm: 8.26, offsetStandardUncertaintyPpm: 0.001 }, '8.3 ± 0.1 ppm'],
  [{ offsetPpm: 140, offsetStandardUncertaintyPpm: 112 }, '140 ± 112 ppm'],
])('writes %j as %s', (offset, text) => expect(formatPpm(offset)).toBe(text));
