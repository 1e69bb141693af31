import { describe, expect, it } from 'vitest';
import { believedCount, type ComponentSearch, searchComponents } from '../../../src/analysis/signal/componentSearch.ts';
import { type SeededRandom, seededRandom } from '../../support/seededRandom.ts';

const RATE_HZ = 60;
const OPTIONS = { mostComponents: 3, bandRad: 2 } as const;

type Tone = { readonly hz: number; readonly decayTimeS: number; readonly amplitude: number };

/** The tones' sum, each with a random phase, in complex white noise of `noiseRms` per real value. */
function band(tones: readonly Tone[], durationS: number, noiseRms: number, random: SeededRandom) {
  const length = Math.round(durationS * RATE_HZ);
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (const { hz, decayTimeS, amplitude } of tones) {
    const phase = 2 * Math.PI * random.uniform();
    for (let m = 0; m < length; m++) {
      const timeS = m / RATE_HZ;
      const size = amplitude * Math.exp((-Math.log(1000) / decayTimeS) * timeS);
      re[m]! += size * Math.cos(phase + 2 * Math.PI * hz * timeS);
      im[m]! += size * Math.sin(phase + 2 * Math.PI * hz * timeS);
    }
  }
  for (let m = 0; m < length; m++) {
    re[m]! += noiseRms * random.normal();
    im[m]! += noiseRms * random.normal();
  }
  return { re, im };
}

const hzOf = (search: ComponentSearch, count: number) =>
  search.steps[count - 1]!.fit.components.map((component) => (component.frequencyRad * RATE_HZ) / (2 * Math.PI));

const noiseBelow = (db: number) => 10 ** (-db / 20);

describe('searchComponents', () => {
  it.each([
    { decayTimeS: 8, durationS: 3, db: 30 },
    { decayTimeS: 1, durationS: 2, db: 20 },
    { decayTimeS: 20, durationS: 2, db: 5 },
    { decayTimeS: 0.4, durationS: 1, db: 30 },
  ])('believes in no second tone where there is one, T60 $decayTimeS s at $db dB', ({ decayTimeS, durationS, db }) => {
    const random = seededRandom(1);
    const counts = Array.from({ length: 40 }, () => {
      const series = band([{ hz: 0.7, decayTimeS, amplitude: 1 }], durationS, noiseBelow(db), random);
      return believedCount(searchComponents(series, OPTIONS)!);
    });
    // About 1 in 300 is claimed; two in 40 would be most unlikely.
    expect(counts.filter((count) => count > 1).length).toBeLessThanOrEqual(1);
  });

  it.each([
    { name: 'one whole beat', splitHz: 0.5, ratio: 0.5, durationS: 2, db: 25 },
    { name: 'three fifths of a beat', splitHz: 0.2, ratio: 0.6, durationS: 3, db: 35 },
    { name: 'a beat of 1.7 dB', splitHz: 1.5, ratio: 0.1, durationS: 2.5, db: 30 },
    { name: 'a fast beat', splitHz: 7, ratio: 0.3, durationS: 1, db: 20 },
  ])('finds both tones of $name', ({ splitHz, ratio, durationS, db }) => {
    const random = seededRandom(2);
    const tones = [
      { hz: 0.3, decayTimeS: 6, amplitude: 1 },
      { hz: 0.3 + splitHz, decayTimeS: 6, amplitude: ratio },
    ];
    const found = Array.from({ length: 12 }, () => {
      const search = searchComponents(band(tones, durationS, noiseBelow(db), random), OPTIONS)!;
      return believedCount(search) === 2 ? hzOf(search, 2).sort((a, b) => a - b) : undefined;
    });
    const both = found.filter((hz) => hz !== undefined);
    expect(both.length).toBeGreaterThanOrEqual(10);
    for (const [low, high] of both) expect(Math.abs(high! - low! - splitHz)).toBeLessThan(0.12);
  });

  it('finds prompt sound and aftersound at one frequency', () => {
    const tones = [
      { hz: -0.2, decayTimeS: 2, amplitude: 1 },
      { hz: -0.2, decayTimeS: 12, amplitude: 0.15 },
    ];
    const search = searchComponents(band(tones, 4, noiseBelow(40), seededRandom(3)), OPTIONS)!;
    expect(believedCount(search)).toBe(2);
    const decays = search.steps[1]!.fit.components.map(({ damping }) => Math.log(1000) / (damping * RATE_HZ));
    decays.sort((a, b) => a - b);
    expect(decays[0]! / 2).toBeCloseTo(1, 1);
    expect(decays[1]! / 12).toBeCloseTo(1, 0.6);
  });

  it('finds three tones', () => {
    const tones = [
      { hz: -1, decayTimeS: 5, amplitude: 1 },
      { hz: 0.2, decayTimeS: 5, amplitude: 0.6 },
      { hz: 1.7, decayTimeS: 5, amplitude: 0.4 },
    ];
    const search = searchComponents(band(tones, 3, noiseBelow(30), seededRandom(4)), OPTIONS)!;
    expect(believedCount(search)).toBe(3);
    const found = hzOf(search, 3).sort((a, b) => a - b);
    found.forEach((hz, i) => {
      expect(Math.abs(hz - tones[i]!.hz)).toBeLessThan(0.05);
    });
  });

  it('takes the weight off a knock and keeps the pitch', () => {
    const series = band([{ hz: 0.7, decayTimeS: 6, amplitude: 1 }], 3, noiseBelow(35), seededRandom(5));
    for (const m of [80, 81, 82]) {
      series.re[m]! += 3;
      series.im[m]! -= 2;
    }
    const search = searchComponents(series, OPTIONS)!;
    for (const m of [80, 81, 82]) expect(search.weights[m]!).toBeLessThan(0.1);
    expect(search.weights.filter((weight) => weight < 1).length).toBeLessThan(12);
    expect(believedCount(search)).toBe(1);
    expect(Math.abs(hzOf(search, 1)[0]! - 0.7)).toBeLessThan(0.01);
  });

  it('estimates the noise that is there', () => {
    const series = band([{ hz: 0.7, decayTimeS: 6, amplitude: 1 }], 6, 0.05, seededRandom(6));
    const [step] = searchComponents(series, OPTIONS)!.steps;
    expect(Math.sqrt(step!.variance) / 0.05).toBeCloseTo(1, 1);
  });

  it('finds no more components than asked for, and only within the band', () => {
    const tones = [
      { hz: 0.5, decayTimeS: 5, amplitude: 0.5 },
      { hz: 12, decayTimeS: 5, amplitude: 1 },
    ];
    const series = band(tones, 3, 0.01, seededRandom(7));
    const narrow = searchComponents(series, { mostComponents: 1, bandRad: (2 * Math.PI * 4) / RATE_HZ })!;
    expect(narrow.steps).toHaveLength(1);
    expect(Math.abs(hzOf(narrow, 1)[0]! - 0.5)).toBeLessThan(0.1);
  });

  it('gives up on fewer than eight values', () => {
    const series = { re: new Float64Array(7).fill(1), im: new Float64Array(7) };
    expect(searchComponents(series, OPTIONS)).toBeUndefined();
  });
});
