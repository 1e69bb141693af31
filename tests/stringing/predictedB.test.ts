import { describe, expect, it } from 'vitest';
import { predictedB } from '../../src/stringing/predictedB.ts';
import { loadAtPitch } from '../../src/stringing/stringLoad.ts';

const expected = (diameterMm: number, speakingLengthMm: number, hz: number) =>
  predictedB({
    coreDiameterMm: diameterMm,
    speakingLengthMm,
    tensionN: loadAtPitch({ diameterMm, speakingLengthMm }, hz).tensionN,
    youngsModulusGpa: 200,
  });

describe('predictedB', () => {
  // R. W. Young, J. Acoust. Soc. Am. 24 (1952): 3.4e13·n²·d²/(f²·l⁴) cents, d and l in cm; 865.6 cents are 600/ln 2. Its constant
  // holds for E/ρ = 25.5e6 m²/s², ours is 25.48e6, and it is printed to two digits (1.5 %).
  it.each([
    [0.925, 181, 1046.502],
    [1.049, 960, 175.01],
    [0.831, 95, 2098.32],
  ])('agrees with Young’s formula for %f mm of %i mm', (diameterMm, lengthMm, hz) => {
    const youngCents = (3.4e13 * (diameterMm / 10) ** 2) / (hz ** 2 * (lengthMm / 10) ** 4);
    expect((600 / Math.LN2) * expected(diameterMm, lengthMm, hz)).toBeCloseTo(youngCents, youngCents > 5 ? 0 : 1);
    expect(((600 / Math.LN2) * expected(diameterMm, lengthMm, hz)) / youngCents).toBeCloseTo(1, 2);
  });

  // GNU bc -l: (4*a(1))^3*200*10^9*(1.049/1000)^4/(64*766*0.96^2), and the same for C7
  it('agrees with the reference', () => {
    expect(
      predictedB({ coreDiameterMm: 1.049, speakingLengthMm: 960, tensionN: 766, youngsModulusGpa: 200 }),
    ).toBeCloseTo(1.662e-4, 7);
    expect(
      predictedB({ coreDiameterMm: 0.831, speakingLengthMm: 95, tensionN: 670, youngsModulusGpa: 200 }),
    ).toBeCloseTo(7.642e-3, 6);
  });

  it('goes with the square of the diameter at a given pitch', () => {
    const [thin, thick] = [expected(0.9, 200, 900), expected(1.0, 200, 900)];
    expect(thick / thin).toBeCloseTo((1.0 / 0.9) ** 2, 10);
  });

  it.each(['coreDiameterMm', 'speakingLengthMm', 'tensionN', 'youngsModulusGpa'])(
    'refuses %s of zero by name',
    (name) => {
      const string = { coreDiameterMm: 1, speakingLengthMm: 400, tensionN: 700, youngsModulusGpa: 200 };
      expect(() => predictedB({ ...string, [name]: 0 })).toThrow(new RegExp(name));
    },
  );
});
