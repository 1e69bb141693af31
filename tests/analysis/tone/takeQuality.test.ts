import { describe, expect, it } from 'vitest';
import { judgeQuality, leastDurationS, type QualityFacts } from '../../../src/analysis/tone/takeQuality.ts';
import { partialOf } from '../partialFits.ts';

const RATE_HZ = 8000;

function toneOf(amplitude: number, durationS = 1.5, limit = Infinity): Float32Array {
  return Float32Array.from({ length: durationS * RATE_HZ }, (_, n) => {
    const value = amplitude * Math.exp((-2 * n) / RATE_HZ) * Math.cos((2 * Math.PI * 441.7 * n) / RATE_HZ);
    return Math.max(-limit, Math.min(limit, value));
  });
}

function facts(samples: Float32Array, overrides: Partial<QualityFacts> = {}): QualityFacts {
  return {
    samples,
    sampleRateHz: RATE_HZ,
    onsetIndex: 0,
    endIndex: samples.length,
    midi: 69,
    partials: [partialOf(1, [{ hz: 441.7, amplitude: 0.5 }])],
    hasSecondNote: false,
    steadyShare: 1,
    lifeTimeS: 3,
    isAnotherNote: false,
    ...overrides,
  };
}

describe('judgeQuality', () => {
  it('finds no fault with a good take', () => {
    const quality = judgeQuality(facts(toneOf(0.5)));
    expect(quality).toMatchObject({ isUsable: true, isClipped: false, faults: [] });
  });

  it('states signal to noise: the tone’s RMS over its first half second against the partials’ noise', () => {
    const partials = [1e-3, 2e-3, 0.4].map((noiseRms) => partialOf(1, [{ hz: 441.7, amplitude: 0.5 }], { noiseRms }));
    // RMS of e^(−2t)·cos over 0.5 s: √((1 − e^(−2))/(2·4·0.5))·A; the median noise counts, one disturbed partial does not.
    const toneRms = 0.5 * Math.sqrt((1 - Math.exp(-2)) / 4);
    expect(judgeQuality(facts(toneOf(0.5), { partials })).snrDb).toBeCloseTo(20 * Math.log10(toneRms / 2e-3), 1);
  });

  it.each([0.99, 0.3])('sees clipping at %s of full scale', (limit) => {
    const quality = judgeQuality(facts(toneOf(3 * limit, 1.5, limit)));
    expect(quality).toMatchObject({ isClipped: true, isUsable: false });
    expect(quality.faults).toEqual(['clipped']);
  });

  it('does not take the crest of a loud low tone for clipping', () => {
    const low = Float32Array.from(
      { length: RATE_HZ },
      (_, n) => 0.999 * Math.exp((-0.3 * n) / RATE_HZ) * Math.cos((2 * Math.PI * 27.5 * n) / RATE_HZ),
    );
    expect(judgeQuality(facts(low, { midi: 21 })).isClipped).toBe(false);
  });

  it.each([
    {
      fault: 'too-quiet',
      samples: toneOf(3e-4),
      overrides: { partials: [partialOf(1, [{ hz: 441.7, amplitude: 3e-4 }], { noiseRms: 1e-6 })] },
    },
    { fault: 'knock', samples: toneOf(0.5), overrides: { lifeTimeS: 0.3 } },
    { fault: 'too-short', samples: toneOf(0.5, 0.2), overrides: {} },
    { fault: 'two-notes', samples: toneOf(0.5), overrides: { hasSecondNote: true } },
    { fault: 'wrong-note', samples: toneOf(0.5), overrides: { isAnotherNote: true } },
    { fault: 'speech', samples: toneOf(0.5), overrides: { steadyShare: 0.5 } },
    {
      fault: 'too-noisy',
      samples: toneOf(0.5),
      overrides: { partials: [partialOf(1, [{ hz: 441.7, amplitude: 0.5 }], { noiseRms: 0.2 })] },
    },
  ])('names $fault, and that alone', ({ fault, samples, overrides }) => {
    const quality = judgeQuality(facts(samples, overrides));
    expect(quality.faults).toEqual([fault]);
    expect(quality.isUsable).toBe(false);
  });

  it('does not call a short treble tone a knock, nor a tone whose life is not known', () => {
    expect(judgeQuality(facts(toneOf(0.5), { midi: 105, lifeTimeS: 0.3 })).faults).toEqual([]);
    expect(judgeQuality(facts(toneOf(0.5), { lifeTimeS: null })).faults).toEqual([]);
  });

  it('looks at nothing before the strike', () => {
    const clippedBefore = Float32Array.from([...toneOf(3, 0.5, 0.9), ...toneOf(0.5)]);
    expect(judgeQuality(facts(clippedBefore, { onsetIndex: 0.5 * RATE_HZ })).isClipped).toBe(false);
  });
});

it('leastDurationS is a quarter of a second in the treble and more in the bass', () => {
  expect(leastDurationS(108)).toBe(0.25);
  expect(leastDurationS(69)).toBe(0.25);
  // Twenty periods of C2, 65.406 Hz (ISO 16).
  expect(leastDurationS(36)).toBeCloseTo(20 / 65.406, 4);
  expect(leastDurationS(21)).toBe(0.7);
});
