import { describe, expect, it } from 'vitest';
import { standardNormalQuantile } from '../../src/survey/standardNormalQuantile.ts';

// Reference: Python 3, statistics.NormalDist().inv_cdf(p)
const REFERENCE = [
  [0.9, 1.2815515655446008],
  [0.975, 1.9599639845400536],
  [0.9975, 2.8070337683438114],
  [0.0001, -3.71901648545568],
] as const;

describe('standardNormalQuantile', () => {
  it.each(REFERENCE)('at %f agrees with the reference to its stated error', (probability, value) => {
    expect(Math.abs(standardNormalQuantile(probability) - value)).toBeLessThan(4.5e-4);
  });

  it.each([0, 1, -0.1, Number.NaN])('refuses a probability of %f and names it', (probability) => {
    expect(() => standardNormalQuantile(probability)).toThrow(/probability/);
  });
});
