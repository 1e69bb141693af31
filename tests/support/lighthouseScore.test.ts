import { expect, it } from 'vitest';
import { performanceScore } from './lighthouseScore.ts';

const GOOD = { firstPaintMs: 1800, largestPaintMs: 2500, blockedMs: 200, layoutShift: 0.1 };
const MEDIAN = { firstPaintMs: 3000, largestPaintMs: 4000, blockedMs: 600, layoutShift: 0.25 };

it('is ninety and fifty at the control points, by the definition of the curve', () => {
  expect(performanceScore(GOOD)).toBeCloseTo(90, 3);
  expect(performanceScore(MEDIAN)).toBeCloseTo(50, 3);
});

it('is a hundred for a page that is there at once, and falls with each figure by its weight', () => {
  const none = { firstPaintMs: 0, largestPaintMs: 0, blockedMs: 0, layoutShift: 0 };
  expect(performanceScore(none)).toBe(100);
  // Half the score of one figure: weights 10, 25, 30 and 25 of 90.
  expect(performanceScore({ ...none, firstPaintMs: 3000 })).toBeCloseTo(100 - 50 * (10 / 90), 3);
  expect(performanceScore({ ...none, blockedMs: 600 })).toBeCloseTo(100 - 50 * (30 / 90), 3);
});
