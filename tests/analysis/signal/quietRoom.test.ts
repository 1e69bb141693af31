import { describe, expect, it } from 'vitest';
import { measureQuietRoom } from '../../../src/analysis/signal/quietRoom.ts';
import { addHum, type HumSpec, noiseSource } from '../../support/roomNoise.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const RATE_HZ = 48000;

/** White (or pink) noise of a given level (of a sine of the same power), with whatever is added. */
function room(noiseDbfs: number, seed: number, isPink = false, durationS = 2): Float32Array {
  const rms = 10 ** (noiseDbfs / 20) / Math.SQRT2;
  const next = noiseSource(seededRandom(seed), isPink);
  return Float32Array.from({ length: durationS * RATE_HZ }, () => rms * next());
}

function withHum(samples: Float32Array, hum: HumSpec): Float32Array {
  const out = Float64Array.from(samples);
  addHum(out, RATE_HZ, hum, seededRandom(Math.round(hum.hz)));
  return Float32Array.from(out);
}

describe('measureQuietRoom', () => {
  it.each([-30, -60, -85])('finds the level of white noise at %i dBFS, and its share from 2 to 8 kHz', (level) => {
    const { noiseDbfs, trebleNoiseDbfs } = measureQuietRoom(room(level, 1), RATE_HZ);
    expect(Math.abs(noiseDbfs - level)).toBeLessThan(0.3);
    expect(Math.abs(trebleNoiseDbfs - (level + 10 * Math.log10(6 / 24)))).toBeLessThan(0.5);
  });

  it('counts a full-scale sine as 0 dBFS', () => {
    const sine = Float32Array.from({ length: 2 * RATE_HZ }, (_, i) => Math.sin((2 * Math.PI * 1000 * i) / RATE_HZ));
    expect(measureQuietRoom(sine, RATE_HZ).noiseDbfs).toBeCloseTo(0, 2);
  });

  it('leaves rumble below the lowest note out', () => {
    const rumble = Float32Array.from({ length: 2 * RATE_HZ }, (_, i) => Math.sin((2 * Math.PI * 12 * i) / RATE_HZ));
    expect(measureQuietRoom(rumble, RATE_HZ).noiseDbfs).toBeLessThan(-60);
  });

  it.each([
    { hz: 50, mainsHz: 50, levelDb: -55 },
    { hz: 49.9, mainsHz: 50, levelDb: -55 },
    { hz: 60, mainsHz: 60, levelDb: -55 },
    { hz: 60.03, mainsHz: 60, levelDb: -65 },
    { hz: 100, mainsHz: 50, levelDb: -60 }, // a rectifier's, without the fundamental
    { hz: 120, mainsHz: 60, levelDb: -60 },
  ])('finds hum of $hz Hz at $levelDb dBFS in pink noise at −60 dBFS', ({ hz, mainsHz, levelDb }) => {
    const { hum } = measureQuietRoom(withHum(room(-60, 3, true), { hz, levelDb }), RATE_HZ);
    expect(hum?.mainsHz).toBe(mainsHz);
    expect(Math.abs((hum?.strongestHz ?? 0) - hz)).toBeLessThan(0.1);
    // Each further tone is 6 dB weaker: 1 + 1/4 + 1/16 of the first one's power.
    expect(Math.abs((hum?.levelDbfs ?? 0) - (levelDb + 10 * Math.log10(1.3125)))).toBeLessThan(1.5);
  });

  it.each([true, false])('finds no hum in 20 rooms of noise (pink: %s)', (isPink) => {
    const found = Array.from({ length: 20 }, (_, seed) => measureQuietRoom(room(-50, 100 + seed, isPink), RATE_HZ).hum);
    expect(found.filter((hum) => hum !== null)).toEqual([]);
  });

  it.each([48.999, 61.735, 98, 123.47, 246.94])('takes a note of %d Hz for no hum', (hz) => {
    expect(measureQuietRoom(withHum(room(-60, 5), { hz, levelDb: -30 }), RATE_HZ).hum).toBeNull();
  });

  it('says silence of digital silence', () => {
    const silent = measureQuietRoom(new Float32Array(2 * RATE_HZ), RATE_HZ);
    expect(silent).toEqual({ noiseDbfs: -Infinity, trebleNoiseDbfs: -Infinity, hum: null });
  });

  it('refuses less than a second', () => {
    expect(() => measureQuietRoom(new Float32Array(1000), RATE_HZ)).toThrow(/at least 1 s/);
  });
});
