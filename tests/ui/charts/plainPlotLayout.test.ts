import { expect, it } from 'vitest';
import { innerOf, pathOf, placeIn, uncrowded } from '../../../src/ui/charts/plainPlotLayout.ts';

const inner = innerOf(500, 200, 1);

it('puts the ends of the axes on the edges of the field, with more room above for a row of strokes', () => {
  const place = placeIn(inner, { low: 0, high: 10 }, { low: -5, high: 5 });
  expect([place.x(0), place.x(10)]).toEqual([inner.left, inner.right]);
  expect([place.y(-5), place.y(5)]).toEqual([inner.bottom, inner.top]);
  expect(innerOf(500, 200, 2).top).toBeGreaterThan(inner.top);
  expect(
    pathOf(
      [
        { x: 0, y: 5 },
        { x: 10, y: -5 },
      ],
      place,
    ),
  ).toBe(`M${inner.left} ${inner.top}L${inner.right} ${inner.bottom}`);
  expect(pathOf([], place)).toBe('');
});

it('keeps a line straight that leaves the field', () => {
  const place = placeIn(inner, { low: 0, high: 10 }, { low: 0, high: 10 });
  expect(place.y(20) - place.y(10)).toBeCloseTo(place.y(10) - place.y(0), 6);
});

it('leaves out a label that would touch its neighbour, and keeps the last', () => {
  const ticks = [0, 3, 12, 14].map((at) => ({ at, label: String(at) }));
  expect(uncrowded(ticks, (at) => 10 * at, 34).map(({ at }) => at)).toEqual([0, 14]);
  expect(uncrowded(ticks, (at) => 100 * at, 34)).toEqual(ticks);
});
