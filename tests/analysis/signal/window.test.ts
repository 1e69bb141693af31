import { describe, expect, it } from 'vitest';
import { powerSpectrum } from '../../../src/analysis/signal/fourier.ts';
import { blackmanHarris } from '../../../src/analysis/signal/window.ts';

// Figures of the four-term window of least side lobes: F. J. Harris, Proc. IEEE 66 (1978), table 1.
describe('blackmanHarris', () => {
  const window = blackmanHarris(256);
  const sum = window.reduce((total, value) => total + value, 0);

  it('has a coherent gain of 0.36 and a noise bandwidth of 2.00 bins', () => {
    const energy = window.reduce((total, value) => total + value * value, 0);
    expect(sum / 256).toBeCloseTo(0.35875, 12);
    expect((256 * energy) / sum ** 2).toBeCloseTo(2.004, 3);
  });

  it('has side lobes of −92 dB outside a main lobe of ±4 bins', () => {
    const perBin = 16;
    const power = powerSpectrum(window, 256 * perBin);
    const levelDb = power.map((value) => 10 * Math.log10(Math.max(value, 1e-300) / sum ** 2));
    const outside = levelDb.subarray(4 * perBin);
    expect(Math.max(...outside)).toBeCloseTo(-92, 0);
    expect(Math.max(...outside)).toBeLessThan(-91.9);
    expect(levelDb[3 * perBin]!).toBeGreaterThan(-80);
  });

  it('is periodic and symmetrical: value i equals value size − i, the middle is 1', () => {
    for (let i = 1; i < 128; i++) expect(window[i]).toBeCloseTo(window[256 - i]!, 14);
    expect(window[128]).toBeCloseTo(1, 12);
    expect(window[0]).toBeCloseTo(6e-5, 12);
  });
});
