/** One recording of many notes becomes one document; it is read block by block. */
import type { AudioStream } from '../files/audio/audioStream.ts';
import type { SurveyFileDocument } from '../files/measureDocument.ts';
import { surveyFileDocument } from '../files/surveyFileDocument.ts';
import type { Compass } from '../piano/compass.ts';
import type { StringPosition } from '../piano/reading.ts';
import { createSurveyRecording } from '../survey/surveyRecording.ts';
import { withRecording } from './openRecording.ts';

export type SurveyFileOptions = {
  readonly compass: Compass;
  readonly stringPosition: StringPosition;
  readonly pitchStandardHz: number;
};

/** @throws {UsageFault} if the file cannot be read */
export function surveyFile(
  file: string,
  options: SurveyFileOptions,
  onProgress: (line: string) => void,
): Promise<SurveyFileDocument> {
  return withRecording(file, async (audio) => {
    const recording = createSurveyRecording(audio.sampleRateHz, options);
    let sampleCount = 0;
    for await (const block of audio.blocks()) {
      recording.push(block);
      sampleCount += block.length;
      onProgress(progressLine(sampleCount / audio.sampleRateHz, audio));
    }
    const { sampleRateHz, warnings } = audio;
    return surveyFileDocument(
      { file, sampleRateHz, pitchStandardHz: options.pitchStandardHz },
      recording.finish(),
      warnings.map((warning) => warning.message),
    );
  });
}

function progressLine(heardS: number, { statedDurationS }: AudioStream): string {
  const of = statedDurationS === null ? '' : ` of ${Math.round(statedDurationS)}`;
  return `${Math.round(heardS)}${of} s heard`;
}
