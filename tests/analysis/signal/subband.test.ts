import { describe, expect, it } from 'vitest';
import {
  extractSubband,
  noiseDensityRatio,
  type SubbandRequest,
  subbandGain,
} from '../../../src/analysis/signal/subband.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const RATE_HZ = 8000;
type Tone = { readonly hz: number; readonly dampingPerS: number; readonly amplitude: number };

function tone({ hz, dampingPerS, amplitude }: Tone, count: number, phase: number): Float64Array {
  return Float64Array.from({ length: count }, (_, n) => {
    const timeS = n / RATE_HZ;
    return amplitude * Math.exp(-dampingPerS * timeS) * Math.cos(2 * Math.PI * hz * timeS + phase);
  });
}

function requestOf(overrides: Partial<SubbandRequest>): SubbandRequest {
  const usual = {
    sampleRateHz: RATE_HZ,
    startIndex: 0,
    endIndex: 8000,
    centreHz: 1000,
    spacingHz: 200,
    leastRateHz: 50,
  };
  return { ...usual, ...overrides };
}

describe('extractSubband', () => {
  it.each([
    { offsetHz: 0, dampingPerS: 0, spacingHz: 200, leastRateHz: 50 },
    { offsetHz: 3.7, dampingPerS: 5, spacingHz: 200, leastRateHz: 50 },
    { offsetHz: -6, dampingPerS: 1, spacingHz: 200, leastRateHz: 200 },
    { offsetHz: 2, dampingPerS: 40, spacingHz: 100, leastRateHz: 100 },
    { offsetHz: 1, dampingPerS: -0.5, spacingHz: 333, leastRateHz: 60 },
  ])('keeps a damped sinusoid one, $offsetHz Hz off, and changes its size by subbandGain', (row) => {
    const { offsetHz, dampingPerS, ...request } = row;
    // 1000 Hz is a multiple of the spacing's zeros, so its mirror image at −1000 Hz falls on one as well, nearly.
    const samples = tone({ hz: 1000 + offsetHz, dampingPerS, amplitude: 0.8 }, 8000, 0.4);
    const band = extractSubband(samples, requestOf(request));
    const sizeAt = (m: number) => Math.hypot(band.re[m]!, band.im[m]!);
    // Half of the real tone's amplitude lies at its positive frequency.
    expect(sizeAt(0) / (0.4 * subbandGain(band, offsetHz, dampingPerS))).toBeCloseTo(1, 2);
    const span = Math.min(20, band.re.length - 1);
    const decay = Math.log(sizeAt(0) / sizeAt(span)) / (span / band.rateHz);
    expect(Math.abs(decay - dampingPerS)).toBeLessThan(0.02 + 0.02 * Math.abs(dampingPerS));
    const turn = Math.atan2(
      band.im[1]! * band.re[0]! - band.re[1]! * band.im[0]!,
      band.re[1]! * band.re[0]! + band.im[1]! * band.im[0]!,
    );
    expect((turn * band.rateHz) / (2 * Math.PI)).toBeCloseTo(offsetHz, 1);
  });

  it.each([1, -1, 2, 3])('lets nothing through of a neighbour %s spacings away', (steps) => {
    const samples = tone({ hz: 1000 + 200 * steps, dampingPerS: 0, amplitude: 1 }, 8000, 1);
    const band = extractSubband(samples, requestOf({}));
    expect(Math.max(...band.re.map(Math.abs), ...band.im.map(Math.abs))).toBeLessThan(1e-10);
  });

  it('weakens a neighbour a tenth of a spacing off its zero by more than 55 dB', () => {
    const samples = tone({ hz: 1220, dampingPerS: 0, amplitude: 1 }, 8000, 1);
    const band = extractSubband(samples, requestOf({}));
    expect(Math.max(...band.re.map(Math.abs))).toBeLessThan(0.5 * 10 ** (-55 / 20));
  });

  it('has the rate that is asked for, or the spacing where that is less, and starts where told', () => {
    const samples = tone({ hz: 1000, dampingPerS: 0, amplitude: 1 }, 8000, 0);
    expect(extractSubband(samples, requestOf({})).rateHz).toBe(50);
    expect(extractSubband(samples, requestOf({ leastRateHz: 90 })).rateHz).toBe(100);
    expect(extractSubband(samples, requestOf({ leastRateHz: 500 })).rateHz).toBe(200);
    const silentBefore = samples.map((value, n) => (n < 4000 ? 0 : value));
    const late = extractSubband(silentBefore, requestOf({ startIndex: 4000 }));
    expect(Math.hypot(late.re[0]!, late.im[0]!)).toBeCloseTo(0.5, 6);
  });

  it('loses no accuracy over a long take: the phase of a steady tone stands still', () => {
    const samples = tone({ hz: 1000, dampingPerS: 0, amplitude: 1 }, 8000 * 8, 0);
    const band = extractSubband(samples, requestOf({ endIndex: samples.length }));
    expect(band.im.length).toBeGreaterThan(100);
    for (const value of band.im) expect(Math.abs(value)).toBeLessThan(1e-9);
  });

  it('is empty for a stretch shorter than three periods of the spacing', () => {
    expect(extractSubband(new Float64Array(8000), requestOf({ endIndex: 100 })).re).toHaveLength(0);
  });
});

describe('noiseDensityRatio', () => {
  it.each([
    { leastRateHz: 50, offsetHz: 0 },
    { leastRateHz: 50, offsetHz: 12 },
    { leastRateHz: 200, offsetHz: 0 },
    { leastRateHz: 200, offsetHz: 60 },
  ])('is what white noise has there, at $leastRateHz values a second $offsetHz Hz off', ({ leastRateHz, offsetHz }) => {
    const { normal } = seededRandom(11);
    const samples = Float64Array.from({ length: 240_000 }, normal);
    const band = extractSubband(samples, requestOf({ endIndex: samples.length, leastRateHz }));
    const frame = 50;
    const frames = Math.floor(band.re.length / frame);
    let [density, mean] = [0, 0];
    for (let f = 0; f < frames; f++) {
      let [re, im] = [0, 0];
      for (let m = f * frame; m < (f + 1) * frame; m++) {
        const angle = (2 * Math.PI * offsetHz * m) / band.rateHz;
        re += band.re[m]! * Math.cos(angle) + band.im[m]! * Math.sin(angle);
        im += band.im[m]! * Math.cos(angle) - band.re[m]! * Math.sin(angle);
        mean += band.re[m]! ** 2 + band.im[m]! ** 2;
      }
      density += (re * re + im * im) / frame;
    }
    const measured = density / (mean / frame);
    // A periodogram's mean over F frames scatters by 1/√F; three of these.
    expect(Math.abs(measured / noiseDensityRatio(band, offsetHz) - 1)).toBeLessThan(3 / Math.sqrt(frames) + 0.05);
  });
});
