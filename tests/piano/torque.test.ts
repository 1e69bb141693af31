import { describe, expect, it } from 'vitest';
import { formatMultiple, formatTorque, formatTorqueInBoth } from '../../src/piano/formatTorque.ts';
import { inchPoundsToNm, nmToInchPounds } from '../../src/piano/torque.ts';

describe('torque in two units', () => {
  // Reference: GNU bc -l, scale=12: x*0.0254*4.4482216152605
  it.each([
    [50, 5.649241451381],
    [80, 9.03878632221],
    [120, 13.558179483314],
  ])('%s in·lb are %s N·m', (inchPounds, nm) => {
    expect(inchPoundsToNm(inchPounds)).toBeCloseTo(nm, 10);
    expect(nmToInchPounds(nm)).toBeCloseTo(inchPounds, 9);
  });

  it('is written to a tenth of a newton metre and a whole inch-pound', () => {
    expect(formatTorque(8.47)).toBe('8.5\u00a0N·m');
    expect(formatTorque(8.47, 'in·lb')).toBe('75\u00a0in·lb');
    expect(formatTorqueInBoth(8.47)).toBe('8.5\u00a0N·m (75\u00a0in·lb)');
    expect(formatMultiple(2.94)).toBe('2.9\u2009×');
  });
});
