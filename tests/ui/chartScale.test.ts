import { describe, expect, it } from 'vitest';
import { COMPASS_85, COMPASS_88 } from '../../src/piano/compass.ts';
import { logScale, noteTicks, roundScale } from '../../src/ui/chartScale.ts';

describe('roundScale', () => {
  it.each([
    [
      [-3.2, 4.4],
      [-4, -2, 0, 2, 4, 6],
    ],
    [
      [-0.31, -0.12],
      [-1.5, -1, -0.5, 0, 0.5, 1],
    ],
    [
      [12, 55],
      [0, 10, 20, 30, 40, 50, 60],
    ],
    [[0.0], [-1, -0.5, 0, 0.5, 1]],
  ])('of %j has the ticks %j', (values, ticks) => {
    expect(roundScale(values).ticks).toEqual(ticks);
  });

  it.each([[[-3.2, 4.4]], [[0.001]], [[-250, 13]], [[7]], [[]]])(
    'of %j holds every value and zero',
    (values: number[]) => {
      const scale = roundScale(values);
      expect(scale.low).toBeLessThanOrEqual(Math.min(0, ...values));
      expect(scale.high).toBeGreaterThanOrEqual(Math.max(0, ...values));
      expect(scale.ticks).toContain(0);
      expect(scale.ticks.length).toBeLessThan(12);
    },
  );

  it('is never so fine that noise fills it', () => {
    const { low, high } = roundScale([0.01, -0.01]);
    expect(high - low).toBeGreaterThanOrEqual(2);
  });
});

describe('logScale', () => {
  it.each([
    [
      [0.3, 7],
      [0.2, 0.5, 1, 2, 5, 10],
    ],
    [
      [1e-4, 5e-4],
      [0.0001, 0.0002, 0.0005],
    ],
    [[3], [2, 5]],
    [[2], [2, 5]],
    [
      [2e-5, 4],
      [1e-5, 1e-4, 1e-3, 0.01, 0.1, 1, 10],
    ],
  ])('of %j has the ticks %j', (values, ticks) => {
    expect(logScale(values)).toEqual({ low: ticks[0], high: ticks.at(-1), ticks, isLog: true });
  });

  it.each([[[0, 1]], [[-1, 1]], [[]], [[1, Number.POSITIVE_INFINITY]]])('refuses %j', (values: number[]) => {
    expect(() => logScale(values)).toThrow(RangeError);
  });
});

describe('noteTicks', () => {
  it('name both ends and the Cs between', () => {
    expect(noteTicks(COMPASS_88)).toEqual([21, 24, 36, 48, 60, 72, 84, 96, 108]);
    expect(noteTicks(COMPASS_85)).toEqual([21, 24, 36, 48, 60, 72, 84, 96, 105]);
  });

  it('leave out a C that would touch an end', () => {
    expect(noteTicks({ lowestMidi: 23, highestMidi: 49 })).toEqual([23, 36, 49]);
  });
});
