import { expect, it } from 'vitest';
import { gaugeName, gaugeOfNumber, gaugesOf, nearestGauge, seriesOf } from '../../src/piano/wireGauge.ts';

// A printed music wire gauge table, inches and millimetres beside each other (public; read twice, in lists that agree).
const TABLE: readonly (readonly [number: number, mm: number])[] = [
  [12, 0.737],
  [13, 0.787],
  [14, 0.838],
  [15, 0.889],
  [16, 0.94],
  [17, 0.991],
  [18, 1.041],
  [19, 1.092],
  [20, 1.143],
  [21, 1.194],
  [22, 1.245],
  [23, 1.295],
  [24, 1.397],
  [25, 1.499],
  [26, 1.6],
];

it.each(TABLE)('number %i of the inch series is %f mm', (number, mm) => {
  expect(gaugeOfNumber('inch', number)?.diameterMm).toBeCloseTo(mm, 3);
});

it.each([
  [12, 0.725],
  [13.5, 0.8],
  [17, 0.975],
  [22, 1.225],
  [23, 1.3],
  [25, 1.5],
])('number %f of the metric series is %f mm', (number, mm) => {
  expect(gaugeOfNumber('metric', number)?.diameterMm).toBe(mm);
});

it('goes up without a gap in either series', () => {
  for (const series of ['inch', 'metric'] as const) {
    const diameters = gaugesOf(series).map(({ diameterMm }) => diameterMm);
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
    expect(new Set(diameters).size).toBe(diameters.length);
  }
});

it('finds the nearest size, and none for what lies outside the series', () => {
  expect(nearestGauge('inch', 0.99)?.gaugeNumber).toBe(17);
  expect(nearestGauge('metric', 0.99)?.gaugeNumber).toBe(17.5);
  expect(nearestGauge('metric', 0.6)).toBeUndefined();
  expect(nearestGauge('inch', 2)).toBeUndefined();
});

it('tells the series of measured wire, and none where a diameter is of neither', () => {
  expect(seriesOf([0.8, 0.899, 1.026])).toBe('metric');
  expect(seriesOf([0.788, 0.838, 1.041])).toBe('inch');
  expect(seriesOf([0.8, 0.787])).toBeUndefined();
});

it('writes half numbers as the trade does', () => {
  expect([gaugeName(13), gaugeName(13.5)]).toEqual(['13', '13½']);
});
