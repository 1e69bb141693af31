import { describe, expect, it } from 'vitest';
import { combScore, teethOf } from '../../../src/analysis/tone/combScore.ts';
import { CENTS_PER_CELL, cellPosition, salienceMap } from '../../../src/analysis/tone/salienceMap.ts';
import { partialHz } from '../../../src/analysis/tone/typicalInharmonicity.ts';

const B = 4e-4;

function mapOf(f0Hz: number, numbers: readonly number[], foreignHz: readonly number[] = []) {
  const own = numbers.map((n) => ({ hz: partialHz(f0Hz, B, n), levelDbfs: -20 - 1.5 * n, snrDb: 45 }));
  const foreign = foreignHz.map((hz) => ({ hz, levelDbfs: -22, snrDb: 45 }));
  return salienceMap([...own, ...foreign], 14000, 0.8);
}

const scoreAt = (map: ReturnType<typeof mapOf>, f0Hz: number, shiftCents = 0) =>
  combScore(map, teethOf(f0Hz, B), f0Hz, shiftCents);

const FIRST_TEN = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

it('teethOf lies where Fletcher’s formula puts the partials', () => {
  const teeth = teethOf(220, B);
  for (const n of [1, 2, 7, 20]) expect(teeth[n - 1]).toBeCloseTo(cellPosition(partialHz(220, B, n)), 9);
});

describe('combScore', () => {
  it('is near one for a note’s own comb, with as many partials as there are', () => {
    const comb = scoreAt(mapOf(220, FIRST_TEN), 220);
    expect(comb.score).toBeGreaterThan(0.9);
    expect(comb.highestPartial).toBe(10);
    expect(comb.explained).toBeGreaterThan(0.95);
    expect(comb.completeness).toBeGreaterThan(0.95);
  });

  it.each([
    { name: 'an octave up', f0Hz: 440 },
    { name: 'an octave down', f0Hz: 110 },
    { name: 'a twelfth up', f0Hz: 660 },
    { name: 'a twelfth down', f0Hz: 220 / 3 },
    { name: 'a fifth up', f0Hz: 330 },
    { name: 'a semitone up', f0Hz: 233.08 },
  ])('is clearly less for the comb $name', ({ f0Hz }) => {
    const map = mapOf(220, FIRST_TEN);
    expect(scoreAt(map, f0Hz).score).toBeLessThan(0.75 * scoreAt(map, 220).score);
  });

  it('still knows a bass note whose first two partials are missing', () => {
    const map = mapOf(32.7, [3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    for (const f0Hz of [65.4, 16.35, 98.1])
      expect(scoreAt(map, f0Hz).score).toBeLessThan(0.8 * scoreAt(map, 32.7).score);
  });

  it('moves all teeth by the shift', () => {
    const map = mapOf(220 * 2 ** (30 / 1200), FIRST_TEN);
    expect(scoreAt(map, 220, 30).score).toBeGreaterThan(0.9);
    expect(scoreAt(map, 220, 0).score).toBeLessThan(0.5);
    expect(30 % CENTS_PER_CELL).toBe(0);
  });

  it('counts foreign peaks among the teeth against it, and not those far below', () => {
    const clean = scoreAt(mapOf(880, [1, 2, 3, 4]), 880).score;
    expect(scoreAt(mapOf(880, [1, 2, 3, 4], [1210, 2050, 3000]), 880).score).toBeLessThan(0.8 * clean);
    expect(scoreAt(mapOf(880, [1, 2, 3, 4], [95, 140, 210]), 880).score).toBeCloseTo(clean, 6);
  });

  it('stays between 0 and 1, in silence too', () => {
    const silent = salienceMap([], 14000, 0.8);
    expect(scoreAt(silent, 220).score).toBe(0);
    const crowded = mapOf(220, FIRST_TEN, [221, 439, 441, 660.5]);
    expect(scoreAt(crowded, 220).explained).toBeLessThanOrEqual(1);
    expect(scoreAt(crowded, 220).takenUp).toBeLessThanOrEqual(1);
  });
});
