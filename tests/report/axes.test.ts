import { describe, expect, it } from 'vitest';
import { roundTicks } from '../../src/report/roundTicks.ts';
import { timeAxis } from '../../src/report/timeAxis.ts';

describe('roundTicks', () => {
  it.each([
    [[-6.9, 7.9], 6, [-10, -5, 0, 5, 10]],
    [[0, 0.3], 5, [0, 0.1, 0.2, 0.3]],
    [[31, 60], 3, [30, 40, 50, 60]],
    [[31, 61], 3, [20, 40, 60, 80]],
  ])('takes in %j with at most %i steps', (values, mostSteps, ticks) => {
    const { low, high, values: got } = roundTicks(values, mostSteps);
    expect(low).toBeLessThanOrEqual(Math.min(...values));
    expect(high).toBeGreaterThanOrEqual(Math.max(...values));
    expect(got.length - 1).toBeLessThanOrEqual(mostSteps);
    expect(got).toEqual(ticks);
  });
});

it('makes an axis of a single value', () => {
  const { low, high, values } = roundTicks([5, 5], 4);
  expect(high).toBeGreaterThan(low);
  expect(values.length).toBeGreaterThan(1);
});

describe('timeAxis', () => {
  it('names each year of ten, and stands the first and the last day at the ends', () => {
    const { at, ticks } = timeAxis(['2016-08-18', '2026-02-15'], { left: 100, right: 700, mostLabels: 12 }, 'en-GB');
    expect([at('2016-08-18'), at('2026-02-15')]).toEqual([100, 700]);
    expect(ticks.map(({ label }) => label)).toEqual([
      '2017',
      '2018',
      '2019',
      '2020',
      '2021',
      '2022',
      '2023',
      '2024',
      '2025',
      '2026',
    ]);
  });

  it('names the quarters of a short time and every fifth year of a long one', () => {
    expect(
      timeAxis(['2024-03-04', '2025-02-01'], { left: 0, right: 1, mostLabels: 12 }, 'en-GB').ticks.map(
        ({ label }) => label,
      ),
    ).toEqual(['Apr', 'Jul', 'Oct', '2025']);
    expect(
      timeAxis(['1990-03-04', '2025-02-01'], { left: 0, right: 1, mostLabels: 12 }, 'en-GB').ticks.map(
        ({ label }) => label,
      ),
    ).toEqual(['1995', '2000', '2005', '2010', '2015', '2020', '2025']);
  });

  it('names fewer years where there is less room', () => {
    const { ticks } = timeAxis(['2016-08-18', '2026-02-15'], { left: 0, right: 1, mostLabels: 6 }, 'en-GB');
    expect(ticks.map(({ label }) => label)).toEqual(['2018', '2020', '2022', '2024', '2026']);
  });

  it('draws a single day without dividing by nothing', () => {
    expect(timeAxis(['2024-03-04'], { left: 10, right: 20, mostLabels: 12 }, 'en-GB').at('2024-03-04')).toBe(10);
  });
});
