import { describe, expect, it } from 'vitest';
import { complexSpectrum, powerOfTwoFrom, powerSpectrum } from '../../../src/analysis/signal/fourier.ts';
import { seededRandom } from '../../support/seededRandom.ts';

/** The sum that defines the transform, term by term. */
function directTransform(re: Float64Array, im: Float64Array, size: number): { re: number; im: number }[] {
  return Array.from({ length: size }, (_, k) => {
    let [sumRe, sumIm] = [0, 0];
    for (let n = 0; n < re.length; n++) {
      const angle = (-2 * Math.PI * ((k * n) % size)) / size;
      sumRe += re[n]! * Math.cos(angle) - im[n]! * Math.sin(angle);
      sumIm += re[n]! * Math.sin(angle) + im[n]! * Math.cos(angle);
    }
    return { re: sumRe, im: sumIm };
  });
}

const normals = (length: number, seed: number) => Float64Array.from({ length }, seededRandom(seed).normal);

describe.each([
  { size: 2, length: 2 },
  { size: 64, length: 64 },
  { size: 256, length: 100 },
])('a transform of size $size over $length values', ({ size, length }) => {
  const re = normals(length, 1);
  const im = normals(length, 2);

  it('gives the power of the defining sum', () => {
    const power = powerSpectrum(re, size);
    const direct = directTransform(re, new Float64Array(length), size);
    expect(power).toHaveLength(size / 2 + 1);
    power.forEach((value, k) => {
      expect(value).toBeCloseTo(direct[k]!.re ** 2 + direct[k]!.im ** 2, 9);
    });
  });

  it('gives the complex values of the defining sum, interleaved', () => {
    const spectrum = complexSpectrum(re, im, size);
    const direct = directTransform(re, im, size);
    expect(spectrum).toHaveLength(2 * size);
    direct.forEach((value, k) => {
      expect(spectrum[2 * k]).toBeCloseTo(value.re, 10);
      expect(spectrum[2 * k + 1]).toBeCloseTo(value.im, 10);
    });
  });
});

it('keeps the energy (Parseval), also of a second call with the same size', () => {
  for (const seed of [3, 4]) {
    const frame = normals(512, seed);
    const energy = frame.reduce((sum, value) => sum + value * value, 0);
    const power = powerSpectrum(frame, 512);
    const twoSided = power.reduce((sum, value, k) => sum + (k === 0 || k === 256 ? value : 2 * value), 0);
    expect(twoSided / 512 / energy).toBeCloseTo(1, 12);
  }
});

it.each([
  [1, 2],
  [2, 2],
  [3, 4],
  [1024, 1024],
  [1025, 2048],
])('powerOfTwoFrom(%s) is %s', (length, expected) => expect(powerOfTwoFrom(length)).toBe(expected));

it.each([0, 1, 3, 1000])('refuses a size of %s and names it', (size) => {
  expect(() => powerSpectrum(new Float64Array(1), size)).toThrow(RangeError);
  expect(() => powerSpectrum(new Float64Array(1), size)).toThrow(/size.*power of two/);
});
