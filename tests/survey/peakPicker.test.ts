import { expect, it } from 'vitest';
import { createPeakPicker } from '../../src/survey/peakPicker.ts';

function peaksOf(values: readonly number[]): number[] {
  const picker = createPeakPicker(2, 3);
  return values.flatMap((value, index) => (picker.peak(value) === undefined ? [] : [index - 2]));
}

it.each([
  { values: [0, 1, 5, 1, 0, 0], peaks: [2], why: 'a peak, found two values later' },
  { values: [0, 2, 2, 1, 0, 0], peaks: [], why: 'too small' },
  { values: [0, 5, 5, 5, 0, 0, 0], peaks: [1], why: 'the first of equals' },
  { values: [0, 4, 0, 6, 0, 0], peaks: [3], why: 'the larger of two within reach' },
  { values: [5, 0, 0, 4, 0, 0], peaks: [0, 3], why: 'both of two out of reach, one of them the first value' },
])('createPeakPicker picks $peaks of $values: $why', ({ values, peaks }) => {
  expect(peaksOf(values)).toEqual(peaks);
});
