import { expect, it } from 'vitest';
import { formatCentsSize, formatMonthInFull } from '../../src/piano/formatPlain.ts';

it.each([
  [-4.04, '4.0\u00a0cents'],
  [0.56, '0.6\u00a0cents'],
  [0, '0.0\u00a0cents'],
])('shows the size of %f cents to a tenth, without a sign', (cents, text) => {
  expect(formatCentsSize(cents)).toBe(text);
});

it('names a month in full, in another language too, and leaves what is no date as it is', () => {
  expect(formatMonthInFull('2026-09-14')).toBe('September 2026');
  expect(formatMonthInFull('2026-03-01', 'de')).toBe('März 2026');
  expect(formatMonthInFull('soon')).toBe('soon');
});
