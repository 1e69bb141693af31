import { describe, expect, it } from 'vitest';
import { median, percentOf, quantile, rootMeanSquare } from './statistics.ts';

describe('quantile', () => {
  it('lies on straight lines between the ranks', () => {
    expect(quantile([4, 1, 3, 2], 0)).toBe(1);
    expect(quantile([4, 1, 3, 2], 1)).toBe(4);
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
    expect(quantile([10, 20], 0.95)).toBeCloseTo(19.5, 12);
  });

  it('sorts by size and not by digits', () => expect(median([100, 9, 10])).toBe(10));

  it('has no value where there is none', () => {
    expect(median([])).toBeUndefined();
    expect(rootMeanSquare([])).toBeUndefined();
    expect(percentOf([], () => true)).toBeUndefined();
  });
});

it('the root mean square weighs by size and not by sign', () => expect(rootMeanSquare([3, -4])).toBeCloseTo(3.5355, 4));

it('percentOf counts the items that meet the claim', () =>
  expect(percentOf([1, 2, 3, 4], (value) => value > 3)).toBe(25));
