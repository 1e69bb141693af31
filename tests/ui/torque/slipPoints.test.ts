import { describe, expect, it } from 'vitest';
import { slipPoints, slipSheet, type TorqueSlipPin } from '../../../src/ui/torque/slipPoints.ts';

const pin = (midi: number, torqueNm: number, slipCentsPerYear: number): TorqueSlipPin => ({
  midi,
  stringPosition: 2,
  torqueNm,
  slipCentsPerYear,
  slipU: 0.4,
});

describe('slipPoints', () => {
  it('names the strings that go flat beyond their bar, where names have room, and lists all of them', () => {
    const pins = [pin(60, 8, 0.3), pin(61, 8.2, -0.5), pin(72, 2.5, -5), pin(73, 2.6, -4.95), pin(74, 4.5, -2)];
    const { points, beyond } = slipPoints(pins);
    expect(beyond.map(({ midi }) => midi)).toEqual([72, 73, 74]);
    expect(points.map(({ tag }) => tag?.text)).toEqual([undefined, undefined, 'C5', undefined, 'D5']);
  });

  it('reaches two standard uncertainties either way', () => {
    const [point] = slipPoints([pin(60, 8, -1)]).points;
    expect(point).toMatchObject({ x: 8, y: -1, low: -1.8, high: expect.closeTo(-0.2, 12) });
    expect(point?.detail).toBe('C4, centre string: 8.0\u00a0N·m, −1.00 ±\u20090.40\u00a0cents a year');
  });
});

it('slipSheet has one row a pin with its uncertainty', () => {
  expect(slipSheet([pin(60, 8, -1)]).rows).toEqual([['C4', 60, 2, 8, -1, 0.4]]);
});
