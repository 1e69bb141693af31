import { describe, expect, it } from 'vitest';
import {
  formatHumidityAbout,
  formatHumidityChange,
  formatMonth,
  formatProbability,
  formatRate,
  formatRateValue,
  formatResponse,
  formatSpeed,
  formatWholeHumidity,
  formatYearCount,
} from '../../src/piano/formatStability.ts';

const plain = (text: string) => text.replace(/[\u2009\u00a0]/g, ' ');

describe('a rate', () => {
  it('shows as many decimals as its uncertainty deserves', () => {
    expect(plain(formatRate(-2.413, 0.31))).toBe('−2.41 ± 0.31 cents a year');
    expect(plain(formatRate(-12.4, 3.2))).toBe('−12.4 ± 3.2 cents a year');
    expect(plain(formatRateValue(0.04, 0.052))).toBe('+0.04 ± 0.05');
    expect(plain(formatRateValue(0.04, 0.0002))).toBe('+0.04 ± <0.01');
    expect(formatRate(null)).toBe('–');
  });

  it('is a speed where the way does not matter', () => {
    expect(plain(formatSpeed(-0.62))).toBe('0.6 cents a year');
    expect(plain(formatSpeed(1))).toBe('1.0 cents a year');
  });
});

it('a response names its unit', () => {
  expect(plain(formatResponse(0.812, 0.05))).toBe('+0.81 ± 0.05 cents per % RH');
});

it('a probability is never nought and never certain', () => {
  expect([0, 0.004, 0.5, 0.991, 1].map((p) => plain(formatProbability(p)))).toEqual([
    'less than 1 %',
    'less than 1 %',
    '50 %',
    'more than 99 %',
    'more than 99 %',
  ]);
});

it('months, years and humidity read plainly', () => {
  expect(formatMonth('2021-05-12')).toBe('May 2021');
  expect([1, 2.5, 3].map(formatYearCount)).toEqual(['1 year', '2.5 years', '3 years']);
  expect(plain(formatHumidityAbout(52.3, 0.2))).toBe('52 ± 1 % RH');
  expect(plain(formatWholeHumidity(45.37))).toBe('45 % RH');
  expect([40 - 48.5, 60 - 48].map((change) => plain(formatHumidityChange(change)))).toEqual(['−8.5 % RH', '+12 % RH']);
});
