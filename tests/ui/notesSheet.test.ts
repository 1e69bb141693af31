import { expect, it } from 'vitest';
import { notesSheet } from '../../src/ui/NotesFigure.tsx';

it('the numbers of a chart along the compass name note, series and unit, and the ends of the bars', () => {
  const point = { x: 60.25, y: -1, low: -2, high: 0, detail: '' };
  const series = [{ name: 'right string', shape: 'square' as const, points: [point] }];
  const curve = { name: 'curve', stretches: [[{ x: 61, y: 3, low: 2, high: 4 }]] };
  expect(notesSheet('change_cents', series, curve)).toEqual({
    columns: ['note', 'midi', 'series', 'change_cents', 'change_cents_low', 'change_cents_high'],
    rows: [
      ['C4', 60, 'right string', -1, -2, 0],
      ['C#4', 61, 'curve', 3, 2, 4],
    ],
  });
});
