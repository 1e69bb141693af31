/** A recording on disk, opened; what is wrong with it is a UsageFault that names the file. */
import type { AudioStream } from '../files/audio/audioStream.ts';
import { openAudio } from '../files/audio/openAudio.ts';
import { withFileBytes } from './fileBytes.ts';
import { UsageFault } from './terminal.ts';

export function withRecording<Result>(path: string, use: (audio: AudioStream) => Promise<Result>): Promise<Result> {
  return withFileBytes(path, async (source) => {
    const outcome = await openAudio(source);
    if (!outcome.opened) throw new UsageFault(`cannot read ${path}: ${outcome.fault.message}`);
    return use(outcome.audio);
  });
}
