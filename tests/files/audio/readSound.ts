/** Opens bytes and reads them to the end. */
import { type AudioFault, type AudioStream, readAllSamples } from '../../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import { openAudio } from '../../../src/files/audio/openAudio.ts';

export type Sound = { readonly audio: AudioStream; readonly samples: number[]; readonly warnings: string[] };

export async function readSound(bytes: Uint8Array): Promise<Sound> {
  const outcome = await openAudio(bytesAsSource(bytes));
  if (!outcome.opened) throw new Error(`${outcome.fault.reason}: ${outcome.fault.message}`);
  const samples = [...(await readAllSamples(outcome.audio))];
  return { audio: outcome.audio, samples, warnings: outcome.audio.warnings.map(({ kind }) => kind) };
}

/** Undefined where the bytes could be opened. */
export async function faultOf(bytes: Uint8Array): Promise<AudioFault | undefined> {
  const outcome = await openAudio(bytesAsSource(bytes));
  return outcome.opened ? undefined : outcome.fault;
}
