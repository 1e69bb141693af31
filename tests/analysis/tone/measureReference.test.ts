import { describe, expect, it } from 'vitest';
import { measureReference } from '../../../src/analysis/tone/measureReference.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const RATE_HZ = 48000;

type Tone = { hz: number; durationS?: number; dampingPerS?: number; noise?: number; level?: number; seed?: number };

function sound({ hz, durationS = 12, dampingPerS = 0, noise = 0.001, level = 0.1, seed = 1 }: Tone): Float32Array {
  const { normal } = seededRandom(seed);
  return Float32Array.from({ length: durationS * RATE_HZ }, (_, i) => {
    const timeS = i / RATE_HZ;
    return level * Math.exp(-dampingPerS * timeS) * Math.cos(2 * Math.PI * hz * timeS + 1) + noise * normal();
  });
}

function measured(samples: Float32Array, expectedHz: number) {
  const outcome = measureReference(samples, RATE_HZ, expectedHz);
  if (!outcome.measured) throw new Error(outcome.reason);
  return outcome;
}

describe('measureReference', () => {
  it.each([
    { name: 'a generator at 440 Hz, 60 ppm off', hz: 440 * (1 - 60e-6), expectedHz: 440 },
    { name: 'a tone of 1 kHz', hz: 1000.123, expectedHz: 1000 },
    { name: 'a fork that dies slowly', hz: 439.83, expectedHz: 440, dampingPerS: 0.15 },
    { name: 'a fork 1 % from what is stamped on it', hz: 435, expectedHz: 440, dampingPerS: 0.1 },
    { name: 'a tone in much noise', hz: 523.21, expectedHz: 523.25, noise: 0.05 },
    { name: 'half a minute', hz: 440.01, expectedHz: 440, durationS: 30 },
  ])('measures $name within four of its uncertainties and 2 ppm', ({ hz, expectedHz, ...tone }) => {
    const outcome = measured(sound({ hz, ...tone }), expectedHz);
    expect(Math.abs(outcome.hz - hz)).toBeLessThan(4 * outcome.standardUncertaintyHz);
    expect(Math.abs(outcome.hz / hz - 1)).toBeLessThan(2e-6);
    expect(outcome.standardUncertaintyHz / hz).toBeLessThan(2e-6);
  });

  it('states an uncertainty that covers its errors', () => {
    const scores = Array.from({ length: 12 }, (_, seed) => {
      const outcome = measured(sound({ hz: 440.2, noise: 0.02, seed: 50 + seed }), 440);
      return (outcome.hz - 440.2) / outcome.standardUncertaintyHz;
    });
    const rms = Math.sqrt(scores.reduce((sum, score) => sum + score ** 2, 0) / scores.length);
    // The stated one is at least the fit's own, and for a quarter of noises the parts' scatter makes it larger.
    expect(rms).toBeGreaterThan(0.4);
    expect(rms).toBeLessThan(1.6);
  });

  it('counts in a drift of the tone during the stretch', () => {
    let phase = 0;
    const drifting = Float32Array.from({ length: 16 * RATE_HZ }, (_, i) => {
      phase += (2 * Math.PI * (440 + (0.01 * i) / (16 * RATE_HZ))) / RATE_HZ; // 23 ppm from beginning to end
      return 0.1 * Math.cos(phase);
    });
    const outcome = measured(drifting, 440);
    expect(outcome.standardUncertaintyHz).toBeGreaterThan(0.001);
    expect(Math.abs(outcome.hz - 440.005)).toBeLessThan(3 * outcome.standardUncertaintyHz);
  });

  it.each([
    { name: 'less than ten seconds', samples: sound({ hz: 440, durationS: 9 }), reason: 'too-short' },
    { name: 'a tone that dies within seconds', samples: sound({ hz: 440, dampingPerS: 0.6 }), reason: 'too-short' },
    { name: 'noise', samples: sound({ hz: 440, level: 0 }), reason: 'not-heard' },
    { name: 'silence', samples: new Float32Array(12 * RATE_HZ), reason: 'not-heard' },
    { name: 'another note', samples: sound({ hz: 466.16 }), reason: 'not-heard' },
  ] as const)('gives no figure for $name', ({ samples, reason }) => {
    expect(measureReference(samples, RATE_HZ, 440)).toEqual({ measured: false, reason });
  });

  it('gives no figure where 10 ms are missing in the middle', () => {
    const whole = sound({ hz: 440.7, durationS: 14 });
    const broken = new Float32Array(whole.length - 480);
    broken.set(whole.subarray(0, 7 * RATE_HZ));
    broken.set(whole.subarray(7 * RATE_HZ + 480), 7 * RATE_HZ);
    expect(measureReference(broken, RATE_HZ, 440)).toEqual({ measured: false, reason: 'unsteady' });
  });

  it('gives no figure for two tones that beat', () => {
    const first = sound({ hz: 440, durationS: 14 });
    const second = sound({ hz: 440.6, durationS: 14, level: 0.05 });
    const both = first.map((value, index) => value + second[index]!);
    expect(measureReference(both, RATE_HZ, 440)).toEqual({ measured: false, reason: 'unsteady' });
  });

  it('refuses an expectation out of range and names it', () => {
    expect(() => measureReference(sound({ hz: 440 }), RATE_HZ, 12)).toThrow(/expectedHz/);
  });
});
