import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../../src/analysis/tone/measureTake.ts';
import { readAllSamples } from '../../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import { openAudio } from '../../../src/files/audio/openAudio.ts';
import { decodeTakeSound, encodeTakeSound } from '../../../src/files/audio/takeSound.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { seededRandom } from '../../support/seededRandom.ts';

async function sampleAudio(name: string): Promise<{ samples: Float32Array; sampleRateHz: number }> {
  const bytes = readFileSync(new URL(`../../../sample-audio/${name}`, import.meta.url));
  const outcome = await openAudio(bytesAsSource(new Uint8Array(bytes)));
  if (!outcome.opened) throw new Error(outcome.fault.message);
  return { samples: await readAllSamples(outcome.audio), sampleRateHz: outcome.audio.sampleRateHz };
}

const through = async (samples: Float32Array, sampleRateHz = 48000) =>
  (await decodeTakeSound(encodeTakeSound(samples, sampleRateHz))).samples;

describe('encodeTakeSound', () => {
  it('keeps what came from a 16-bit device exactly, loud or quiet', async () => {
    const { normal } = seededRandom(3);
    for (const loudness of [8000, 600, 3]) {
      const samples = Float32Array.from({ length: 5000 }, () => (Math.round(loudness * normal()) + 0) / 32768);
      expect(await through(samples)).toEqual(samples.map((sample) => Math.max(-1, Math.min(32767 / 32768, sample))));
    }
  });

  it('rounds to a 65536th of the range that the peak needs, however quiet the take', async () => {
    const { uniform } = seededRandom(4);
    for (const peak of [1, 0.4, 0.1, 0.01]) {
      const samples = Float32Array.from({ length: 5000 }, () => peak * (2 * uniform() - 1) * 0.999);
      const back = await through(samples);
      const range = 2 ** Math.ceil(Math.log2(peak));
      const worst = Math.max(...samples.map((sample, index) => Math.abs(sample - (back[index] ?? 0))));
      expect(worst).toBeLessThanOrEqual(range / 65536 + 1e-9);
      expect(worst).toBeGreaterThan(range / 65536 / 2);
    }
  });

  it('holds at full scale what goes beyond it', async () => {
    const back = await through(Float32Array.of(1.5, -1.5, 0.25, 1));
    expect([...back]).toEqual([32767 / 32768, -1, 0.25, 32767 / 32768]);
  });

  it('keeps silence and a single sample', async () => {
    expect(await through(new Float32Array(10_000))).toEqual(new Float32Array(10_000));
    expect(await through(Float32Array.of(-0.5))).toEqual(Float32Array.of(-0.5));
  });

  // 0.001 cents is a tenth of the finest step that is shown. White noise at −100 dBFS stands for a room 60 dB below the tone.
  it.each([
    ['a0-one-string.wav', 1],
    ['a4-one-string.wav', 1],
    ['a4-one-string.wav', 0.01],
    ['c6-false-beat.wav', 0.01],
    ['c8-one-string.wav', 0.01],
  ])('moves partial 1 of %s, %f times as loud, by less than 0.001 cents', async (name, loudness) => {
    const { samples, sampleRateHz } = await sampleAudio(name);
    const { normal } = seededRandom(8);
    const heard = samples.subarray(0, 4 * sampleRateHz).map((sample) => loudness * sample + 1e-5 * normal());
    const options = { pitchStandardHz: 440, stringPosition: 2 } as const;
    const [before, after] = [heard, await through(heard, sampleRateHz)].map((sound) =>
      measureTake(sound, sampleRateHz, options),
    );
    if (!before?.found || !after?.found) throw new Error('no note was found');
    expect(Math.abs(hzToCents(after.reading.partial1Hz, before.reading.partial1Hz))).toBeLessThan(0.001);
  });
});

describe('decodeTakeSound', () => {
  it('says so where the bytes are not a sound, or not all of it', async () => {
    await expect(decodeTakeSound(new Uint8Array(0))).rejects.toThrow(/cannot be read: it is empty/);
    const { normal } = seededRandom(9);
    const whole = encodeTakeSound(
      Float32Array.from({ length: 30_000 }, () => normal() / 10),
      48000,
    );
    await expect(decodeTakeSound(whole.subarray(0, whole.length / 2))).rejects.toThrow(/is damaged: .*cut short/);
  });
});
