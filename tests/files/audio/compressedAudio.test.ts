import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hzToCents } from '../../../src/piano/cents.ts';
import { bytesOf } from '../../support/handWrittenBytes.ts';
import { phaseSlopeHz } from '../../support/phaseSlope.ts';
import { readSound } from './readSound.ts';

const stored = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../sample-audio/${name}`, import.meta.url)));
const TRUTH = JSON.parse(
  readFileSync(new URL('../../../sample-audio/a4-one-string.truth.json', import.meta.url), 'utf8'),
);

async function partial1Hz(bytes: Uint8Array): Promise<number> {
  const { samples, audio } = await readSound(bytes);
  const afterStrike = Float32Array.from(samples).subarray(0.4 * audio.sampleRateHz);
  return phaseSlopeHz(afterStrike, audio.sampleRateHz, 441);
}

describe.each([
  ['wav', 'WAV'],
  ['flac', 'FLAC'],
  ['ogg', 'OGG Vorbis'],
  ['mp3', 'MP3'],
])('a4-one-string.%s', (ending, format) => {
  const bytes = stored(`a4-one-string.${ending}`);

  it('is recognised by its content and read whole', async () => {
    const { audio, samples, warnings } = await readSound(bytes);
    expect(audio).toMatchObject({ format, sampleRateHz: 44100, channelCount: 1 });
    expect(warnings).toEqual([]);
    expect(samples).toHaveLength(132_300);
  });

  it('has partial 1 where the truth says', async () => {
    // The aftersound has a phase of its own and bends the slope by about a tenth of a cent.
    expect(Math.abs(hzToCents(await partial1Hz(bytes), TRUTH[0].partial1Hz))).toBeLessThan(0.2);
  });
});

it('gives the same samples from FLAC as from WAV', async () => {
  const [wav, flac] = await Promise.all(['wav', 'flac'].map((ending) => readSound(stored(`a4-one-string.${ending}`))));
  // The decoder divides 16-bit samples by 2^15 − 1, the WAV reader by 2^15: at most one part in 32767 apart.
  const isApart = (sample: number, index: number) =>
    !(Math.abs(sample - (flac?.samples[index] ?? Number.NaN)) <= Math.abs(sample) / 32_000);
  expect(wav?.samples.filter(isApart)).toEqual([]);
});

it('moves no frequency by lossy coding', async () => {
  const plainHz = await partial1Hz(stored('a4-one-string.wav'));
  for (const ending of ['ogg', 'mp3'])
    expect(Math.abs(hzToCents(await partial1Hz(stored(`a4-one-string.${ending}`)), plainHz))).toBeLessThan(0.02);
});

it.each(['flac', 'mp3'])('skips a tag before the sound of a %s file', async (ending) => {
  const plain = stored(`a4-one-string.${ending}`);
  const tagged = bytesOf('ID3', [4, 0, 0, 0, 0, 2, 1], Array(257).fill(0xff), plain);
  const [withTag, without] = [await readSound(tagged), await readSound(plain)];
  expect(withTag.samples.length).toBe(132_300);
  expect(withTag.samples.every((sample, index) => sample === without.samples[index])).toBe(true);
});
