import { describe, expect, it } from 'vitest';
import type { ScheduleRow } from '../../src/piano/stringingRecords.ts';
import { pinLoad } from '../../src/stringing/pinLoad.ts';

const PLAIN: ScheduleRow = {
  midi: 84,
  stringCount: 3,
  speakingLengthMm: 181,
  wireDiameterMm: 0.925,
  coreDiameterMm: null,
  wrap: null,
  wireGrade: null,
  bridge: null,
  interpolated: [],
};

describe('pinLoad', () => {
  // Tension: 757.08 N, a published worked example (170.2 lbf at 1046.502 Hz). Torque: 757.08 N · (7.16 + 0.925)/2 mm.
  it('multiplies the tension by the radii of pin and wire', () => {
    const load = pinLoad(PLAIN, 440, 7.16);
    if (!load.known) throw new Error(load.reason);
    expect(load.tensionN).toBeCloseTo(757.08, 1);
    expect(load.stringTorqueNm).toBeCloseTo((757.08 * (7.16 + 0.925)) / 2000, 3);
    expect(load.isInterpolated).toBe(false);
  });

  // Worked example of practitioners: 160 lbf, pin 0.282 in, wire 0.039 in: 25.68 in·lb, 2.901 N·m.
  it('gives the torque of the worked example for a string of that tension', () => {
    const wireDiameterMm = 0.039 * 25.4;
    const lengthMm =
      1000 * (Math.sqrt((160 * 4.4482216152605) / (7850 * (Math.PI / 4) * (wireDiameterMm / 1000) ** 2)) / 880);
    const load = pinLoad({ ...PLAIN, midi: 69, speakingLengthMm: lengthMm, wireDiameterMm }, 440, 0.282 * 25.4);
    expect(load.known && load.stringTorqueNm / 2.901).toBeCloseTo(1, 3);
  });

  // Core 1.397 mm, 4.00 mm overall, copper, 1.30 m at 55 Hz: 1828.5 N (worked by hand from the mass formula).
  it('takes the whole mass of a wound string and winds its core on the pin', () => {
    const row = {
      ...PLAIN,
      midi: 33,
      speakingLengthMm: 1300,
      wireDiameterMm: 4,
      coreDiameterMm: 1.397,
      wrap: 'copper' as const,
    };
    const load = pinLoad(row, 440, 7.16);
    if (!load.known) throw new Error(load.reason);
    expect(load.tensionN / 1828.5).toBeCloseTo(1, 3);
    expect(load.stringTorqueNm).toBeCloseTo((load.tensionN * (7.16 + 1.397)) / 2000, 9);
  });

  it('says where a figure it rests on was interpolated', () => {
    const load = pinLoad({ ...PLAIN, interpolated: ['speakingLengthMm'] }, 440, 7.16);
    expect(load.known && load.isInterpolated).toBe(true);
    const other = pinLoad({ ...PLAIN, interpolated: ['wireGrade'] }, 440, 7.16);
    expect(other.known && other.isInterpolated).toBe(false);
  });

  it.each([
    ['no-row', undefined],
    ['length-unknown', { ...PLAIN, speakingLengthMm: null }],
    ['diameter-unknown', { ...PLAIN, wireDiameterMm: null }],
    ['winding-unknown', { ...PLAIN, coreDiameterMm: 0.8 }],
    ['winding-unknown', { ...PLAIN, wrap: 'iron' }],
    ['diameters-contradict', { ...PLAIN, coreDiameterMm: 0.95, wrap: 'iron' }],
  ] as const)('says %s where it cannot be known', (reason, row) => {
    expect(pinLoad(row, 440, 7.16)).toEqual({ known: false, reason });
  });
});
