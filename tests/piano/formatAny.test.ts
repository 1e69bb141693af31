import { expect, it } from 'vitest';
import { formatAny } from '../../src/piano/formatAny.ts';

it.each([
  [null, ''],
  [undefined, ''],
  [41, '41'],
  [41.25, '41.25'],
  [0.000712347, '0.00071235'],
  [440.0001234, '440'],
  [Number.POSITIVE_INFINITY, 'Infinity'],
  [true, 'yes'],
  ['2021-05-04', '4 May 2021'],
  ['A remark', 'A remark'],
  [[52, 71], '52, 71'],
  [{ lowestMidi: 21 }, '{"lowestMidi":21}'],
])('shows %j as %j', (value, text) => {
  expect(formatAny(value)).toBe(text);
});

it('cuts what is too long to compare', () => {
  expect(formatAny('x'.repeat(1000))).toHaveLength(201);
});
