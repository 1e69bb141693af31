import { describe, expect, it } from 'vitest';
import { seededNumbers } from '../../../src/records/demonstration/seededNumbers.ts';

describe('seededNumbers', () => {
  const COUNT = 20_000;

  it('spreads evenly between 0 and 1, for neighbouring seeds independently', () => {
    const [one, two] = [seededNumbers(1), seededNumbers(2)];
    const [a, b] = [one, two].map((numbers) => Array.from({ length: COUNT }, () => numbers.uniform()));
    const mean = a!.reduce((sum, value) => sum + value, 0) / COUNT;
    const together = a!.reduce((sum, value, index) => sum + (value - 0.5) * (b![index]! - 0.5), 0) / COUNT;
    // The mean of 20,000 has a standard deviation of 1/√(12·20,000) = 0.002; the product's is 1/(12·√20,000) = 0.0006.
    expect(mean).toBeCloseTo(0.5, 2);
    expect(Math.abs(together)).toBeLessThan(0.0024);
    expect(Math.min(...a!)).toBeGreaterThan(0);
    expect(Math.max(...a!)).toBeLessThan(1);
  });

  it('draws normal deviates of the asked standard deviation', () => {
    const numbers = seededNumbers(3);
    const values = Array.from({ length: COUNT }, () => numbers.normal(2));
    const variance = values.reduce((sum, value) => sum + value ** 2, 0) / COUNT;
    const beyond = values.filter((value) => Math.abs(value) > 4).length / COUNT;
    // The variance 4 of 20,000 has a standard deviation of 4·√(2/20,000) = 0.04; 4.55 % lie beyond two standard deviations.
    expect(variance).toBeGreaterThan(3.84);
    expect(variance).toBeLessThan(4.16);
    expect(beyond).toBeGreaterThan(0.039);
    expect(beyond).toBeLessThan(0.052);
  });

  it('picks every choice and stays between the bounds', () => {
    const numbers = seededNumbers(4);
    const picks = new Set(Array.from({ length: 200 }, () => numbers.oneOf(['a', 'b', 'c'])));
    expect([...picks].sort()).toEqual(['a', 'b', 'c']);
    for (let draw = 0; draw < 200; draw += 1) {
      const value = numbers.between(-6, 6);
      expect(value).toBeGreaterThan(-6);
      expect(value).toBeLessThan(6);
    }
  });
});
