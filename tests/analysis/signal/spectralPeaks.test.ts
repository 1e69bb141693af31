import { describe, expect, it } from 'vitest';
import { noiseFloorDb, spectralPeaks, spectrumOf } from '../../../src/analysis/signal/spectralPeaks.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const RATE_HZ = 16000;
const LENGTH = 8000;
const LIMITS = { lowestHz: 25, highestHz: 7000, leastSnrDb: 12, most: 50 };

type Line = { readonly hz: number; readonly amplitude: number };

function sound(lines: readonly Line[], noiseRms: number, seed = 1): Float32Array {
  const { normal, uniform } = seededRandom(seed);
  const phases = lines.map(() => 2 * Math.PI * uniform());
  return Float32Array.from({ length: LENGTH }, (_, n) => {
    const tones = lines.map(
      ({ hz, amplitude }, i) => amplitude * Math.cos((2 * Math.PI * hz * n) / RATE_HZ + phases[i]!),
    );
    return tones.reduce((sum, value) => sum + value, 0) + noiseRms * normal();
  });
}

function peaksOf(lines: readonly Line[], noiseRms: number, limits: Partial<typeof LIMITS> = {}) {
  const spectrum = spectrumOf(sound(lines, noiseRms), 0, LENGTH, RATE_HZ);
  return spectralPeaks(spectrum, noiseFloorDb(spectrum, 200), { ...LIMITS, ...limits });
}

describe('spectrumOf', () => {
  it.each([100.5, 440.3, 1000.9, 6543.2])('puts a full-scale sine at 0 dB, %s Hz', (hz) => {
    const spectrum = spectrumOf(sound([{ hz, amplitude: 1 }], 0), 0, LENGTH, RATE_HZ);
    // Half a padded bin off the line the window has lost at most 0.25 dB.
    expect(Math.max(...spectrum.levelDb)).toBeGreaterThan(-0.25);
    expect(Math.max(...spectrum.levelDb)).toBeLessThan(0.01);
    const strongest = spectrum.levelDb.indexOf(Math.max(...spectrum.levelDb));
    expect(Math.abs(strongest * spectrum.binHz - hz)).toBeLessThanOrEqual(spectrum.binHz / 2 + 1e-6);
  });

  it('looks at the stretch asked for and nothing else', () => {
    const twice = Float32Array.from([
      ...sound([{ hz: 500, amplitude: 1 }], 0),
      ...sound([{ hz: 900, amplitude: 1 }], 0),
    ]);
    const second = spectrumOf(twice, LENGTH, 2 * LENGTH, RATE_HZ);
    expect(second.levelDb[Math.round(500 / second.binHz)]!).toBeLessThan(-90);
    expect(second.levelDb[Math.round(900 / second.binHz)]!).toBeGreaterThan(-1);
  });
});

describe('noiseFloorDb', () => {
  it.each([-20, -60, -100])('is the mean power of white noise of %s dBFS RMS', (dbfs) => {
    const spectrum = spectrumOf(sound([], 10 ** (dbfs / 20)), 0, LENGTH, RATE_HZ);
    const floor = noiseFloorDb(spectrum, 400);
    const middle = floor.subarray(200, floor.length - 200);
    const mean = middle.reduce((sum, value) => sum + value, 0) / middle.length;
    // σ²·Σw²/(Σw/2)²: 4·2.004/N for this window (F. J. Harris 1978), as a sine of amplitude 1 is 0 dB.
    const expectedDb = dbfs + 10 * Math.log10((4 * 2.004) / LENGTH);
    expect(Math.abs(mean - expectedDb)).toBeLessThan(0.7);
  });

  it('is not lifted by a few strong lines', () => {
    const noiseOnly = spectrumOf(sound([], 1e-3), 0, LENGTH, RATE_HZ);
    const lines = [800, 1600, 2400].map((hz) => ({ hz, amplitude: 0.3 }));
    const withLines = spectrumOf(sound(lines, 1e-3), 0, LENGTH, RATE_HZ);
    const bin = Math.round(1600 / noiseOnly.binHz);
    expect(noiseFloorDb(withLines, 400)[bin]! - noiseFloorDb(noiseOnly, 400)[bin]!).toBeLessThan(3);
  });
});

describe('spectralPeaks', () => {
  const lines = [
    { hz: 441.37, amplitude: 0.5 },
    { hz: 1203.9, amplitude: 0.05 },
    { hz: 2717.1, amplitude: 0.005 },
  ];

  it('finds each line with its frequency and level, in white noise, and nothing else', () => {
    const peaks = peaksOf(lines, 1e-3, { leastSnrDb: 14 });
    expect(peaks).toHaveLength(3);
    peaks.forEach((peak, i) => {
      expect(Math.abs(peak.hz - lines[i]!.hz)).toBeLessThan(0.15);
      expect(Math.abs(peak.levelDbfs - 20 * Math.log10(lines[i]!.amplitude))).toBeLessThan(0.5);
    });
  });

  it('states how far a line stands above the noise', () => {
    const [peak] = peaksOf(lines, 1e-3);
    const noiseDb = -60 + 10 * Math.log10((4 * 2.004) / LENGTH);
    expect(Math.abs(peak!.snrDb - (20 * Math.log10(0.5) - noiseDb))).toBeLessThan(1.5);
  });

  it('keeps to the limits given', () => {
    expect(peaksOf(lines, 1e-3, { lowestHz: 600 }).every((peak) => peak.hz > 600)).toBe(true);
    expect(peaksOf(lines, 1e-3, { highestHz: 600 }).every((peak) => peak.hz < 600)).toBe(true);
    expect(peaksOf(lines, 1e-3, { most: 1 })).toHaveLength(1);
    expect(peaksOf(lines, 1e-3, { leastSnrDb: 60 }).map((peak) => Math.round(peak.hz))).toEqual([441, 1204]);
  });

  it('finds nothing in digital silence', () => {
    expect(peaksOf([], 0)).toEqual([]);
  });

  it('moves no frequency when the sound is made softer', () => {
    const full = sound(lines, 1e-3);
    const peaks = [full, full.map((value) => value / 64)].map((samples) => {
      const spectrum = spectrumOf(samples, 0, LENGTH, RATE_HZ);
      return spectralPeaks(spectrum, noiseFloorDb(spectrum, 200), LIMITS);
    });
    expect(peaks[1]!.map((peak) => peak.hz)).toEqual(peaks[0]!.map((peak) => expect.closeTo(peak.hz, 9)));
    expect(peaks[0]![0]!.levelDbfs - peaks[1]![0]!.levelDbfs).toBeCloseTo(20 * Math.log10(64), 9);
  });
});
