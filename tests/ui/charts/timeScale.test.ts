import { describe, expect, it } from 'vitest';
import { dateOf, timeOf, timeScale } from '../../../src/ui/charts/timeScale.ts';

const labels = (dates: string[], most: number) => timeScale(dates, most).ticks.map((tick) => tick.label);

describe('an axis of dates', () => {
  it('names years that are not too many', () => {
    expect(labels(['2016-08-18', '2026-02-11'], 6)).toEqual(['2018', '2020', '2022', '2024', '2026']);
    expect(labels(['2016-08-18', '2019-02-11'], 6)).toEqual(['2017', '2018', '2019']);
    expect(labels(['1901-01-01', '1990-01-01'], 6).length).toBeLessThan(7);
  });

  it('names months where the time is short', () => {
    expect(labels(['2024-03-04', '2025-01-20'], 6)).toEqual([
      'Mar 2024',
      'May 2024',
      'Jul 2024',
      'Sept 2024',
      'Nov 2024',
      'Jan 2025',
    ]);
  });

  it('holds every date with room at both ends, even a single one', () => {
    const { low, high } = timeScale(['2024-03-04'], 6);
    expect(low).toBeLessThan(timeOf('2024-03-04'));
    expect(high).toBeGreaterThan(timeOf('2024-03-04'));
    expect(dateOf(timeOf('2024-03-04'))).toBe('2024-03-04');
  });

  it('refuses what is no date', () => {
    expect(() => timeScale([], 6)).toThrow(RangeError);
    expect(() => timeScale(['soon'], 6)).toThrow(RangeError);
  });
});
