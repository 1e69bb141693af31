import { describe, expect, it } from 'vitest';
import { breakingShare, loadAtPitch, stringTorqueNm, tensionGrowth } from '../../src/stringing/stringLoad.ts';

const LBF_N = 4.4482216;
const C8_HZ = 4186.009;

// Reference: GNU bc -l, scale=30. s=7850*(2*L*f)^2; s/10^6; s*4*a(1)/4*d^2   (L, d in metres)
// It checks units and arithmetic. It says nothing about the physics.
const REFERENCE = [
  { diameterMm: 1.0, speakingLengthMm: 400, frequencyHz: 440, stressMpa: 972.6464, tensionN: 763.914696195 },
  { diameterMm: 0.8, speakingLengthMm: 52, frequencyHz: C8_HZ, stressMpa: 1487.772924412, tensionN: 747.836238327 },
];

// Worked examples that practitioners published, to the digits that they printed.
const PUBLISHED = [
  {
    said: 'C6, 181 mm, 0.925 mm, 7850 kg/m³',
    string: [0.925, 181],
    hz: 1046.502,
    density: 7850,
    lbf: 170.2,
    digit: 0.05,
  },
  { said: 'the same at 7900 kg/m³', string: [0.925, 181], hz: 1046.502, density: 7900, lbf: 171.3, digit: 0.05 },
  { said: 'C8, 58.7 mm, 0.030 in', string: [0.762, 58.7], hz: C8_HZ, density: 7850, lbf: 194, digit: 0.5 },
  { said: 'C8, 54 mm, 0.785 mm', string: [0.785, 54], hz: C8_HZ, density: 7850, lbf: 175, digit: 0.5 },
] as const;

describe('loadAtPitch', () => {
  it.each(REFERENCE)('agrees with the reference at $frequencyHz Hz', (row) => {
    const load = loadAtPitch(row, row.frequencyHz);
    expect(load.stressMpa / row.stressMpa).toBeCloseTo(1, 11);
    expect(load.tensionN / row.tensionN).toBeCloseTo(1, 11);
  });

  it.each(PUBLISHED)(
    'gives the published tension of $said',
    ({ string: [diameterMm, speakingLengthMm], hz, density, lbf, digit }) => {
      const { tensionN } = loadAtPitch({ diameterMm, speakingLengthMm }, hz, density);
      expect(Math.abs(tensionN / LBF_N - lbf)).toBeLessThanOrEqual(digit);
    },
  );

  it('gives a stress that does not depend on the diameter', () => {
    const [thin, thick] = [0.775, 1.55].map((diameterMm) => loadAtPitch({ diameterMm, speakingLengthMm: 300 }, 500));
    expect((thick?.stressMpa ?? 0) / (thin?.stressMpa ?? 1)).toBeCloseTo(1, 12);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    'refuses a length of %s mm and names it',
    (speakingLengthMm) => {
      expect(() => loadAtPitch({ diameterMm: 1, speakingLengthMm }, 440)).toThrow(/speakingLengthMm/);
    },
  );
});

describe('breakingShare', () => {
  it('says so when the wire grade is unknown', () => {
    const load = loadAtPitch({ diameterMm: 1, speakingLengthMm: 400 }, 440);
    expect(breakingShare(load)).toEqual({ known: false, reason: 'wire-grade-unknown' });
  });

  it('is the stress over the strength: a published 70 % of 295 lbf', () => {
    const load = loadAtPitch({ diameterMm: 0.7874, speakingLengthMm: 58.7 }, C8_HZ);
    const strengthMpa = (295 * LBF_N) / ((Math.PI / 4) * 0.7874 ** 2);
    expect(breakingShare(load, strengthMpa)).toMatchObject({ known: true, share: expect.closeTo(0.7035, 3) });
  });
});

it('tensionGrowth goes with the square of the frequency', () => {
  expect(tensionGrowth(100)).toBeCloseTo(0.12246, 5);
  expect(tensionGrowth(1200 * Math.log2(440 / 435))).toBeCloseTo((440 / 435) ** 2 - 1, 12);
});

it('stringTorqueNm is tension times arm: 160 lbf on a pin of 0.282 in with wire of 0.039 in is 25.68 in·lbf', () => {
  const torqueNm = stringTorqueNm({ tensionN: 160 * LBF_N, pinDiameterMm: 0.282 * 25.4, wireDiameterMm: 0.039 * 25.4 });
  expect(torqueNm / 0.112985).toBeCloseTo(25.68, 2);
});
