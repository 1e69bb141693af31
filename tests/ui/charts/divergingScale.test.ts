import { describe, expect, it } from 'vitest';
import { divergingStep, LEVELS, levelOf, levelRange } from '../../../src/ui/charts/divergingScale.ts';

describe('the scale from flat to sharp', () => {
  it('is the same on both sides of nought', () => {
    for (const value of [0.2, 0.5, 1.4, 2.5, 9]) expect(levelOf(-value, 1) + levelOf(value, 1)).toBe(0);
    expect(Object.is(levelOf(-0.1, 1), 0)).toBe(true);
  });

  it('puts every value in the class whose range holds it', () => {
    for (let value = -5; value <= 5; value += 0.37) {
      const { from, to } = levelRange(levelOf(value, 0.5), 0.5);
      expect(value >= (from ?? -Infinity) && value <= (to ?? Infinity)).toBe(true);
    }
  });

  it('leaves no gap between its classes', () => {
    const ranges = LEVELS.map((level) => levelRange(level, 2));
    expect(ranges.slice(1).map(({ from }) => from)).toEqual(ranges.slice(0, -1).map(({ to }) => to));
  });

  it('is as wide as nearly all values, and not as a single wild one', () => {
    const quiet = Array.from({ length: 99 }, (_, index) => (index % 3) - 1);
    expect(divergingStep(quiet)).toBe(0.5);
    expect(divergingStep([...quiet, 300])).toBe(0.5);
    expect(divergingStep([0.4, -1.2, 6.1, -12])).toBe(2);
    expect(divergingStep([])).toBe(0.2);
  });
});
