/** One long recording of many notes becomes readings: it is split into takes, and each take is measured as soon as it is over. */
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import type { Compass } from '../piano/compass.ts';
import type { StringPosition, TakeOutcome } from '../piano/reading.ts';
import { assembleSurvey, type HeardTake, type SurveyDocument } from './assembleSurvey.ts';
import { createTakeSplitter, type Segment } from './takeSplitter.ts';
import { nextOfWalk } from './walk.ts';

export type MeasureTake = (samples: Float32Array, sampleRateHz: number, options: MeasureOptions) => TakeOutcome;

export type SurveyRecordingOptions = {
  readonly compass: Compass;
  readonly stringPosition: StringPosition;
  readonly pitchStandardHz: number;
  /** How a take is measured; `measureTake` unless said. */
  readonly measure?: MeasureTake;
};

export type SurveyRecording = {
  /** Any number of mono samples, full scale ±1. */
  push(block: Float32Array): void;
  /** Frames are missing between what was pushed last and what comes next. */
  markHole(): void;
  finish(): SurveyDocument;
};

/**
 * Once a walk up or down the compass is established, each take is measured with its next note as a weak expectation. To measure
 * on several threads instead, use createTakeSplitter, measureOptionsOf and assembleSurvey, which are all this does.
 * @throws {RangeError} if the sample rate or the pitch standard is out of range
 */
export function createSurveyRecording(sampleRateHz: number, options: SurveyRecordingOptions): SurveyRecording {
  const splitter = createTakeSplitter(sampleRateHz);
  const measure = options.measure ?? measureTake;
  const takes: HeardTake[] = [];
  const walked: number[] = [];
  const hear = (segment: Segment) => {
    const measureOptions = measureOptionsOf(segment, sampleRateHz, options, nextOfWalk(walked));
    const outcome = measure(segment.samples, sampleRateHz, measureOptions);
    if (outcome.found && outcome.reading.quality.isUsable) walked.push(outcome.reading.midi);
    takes.push(heardTakeOf(segment, sampleRateHz, outcome));
  };
  return {
    push: (block) => splitter.push(block).forEach(hear),
    markHole: () => splitter.markHole(),
    finish() {
      splitter.finish().forEach(hear);
      return assembleSurvey(takes, options.compass);
    },
  };
}

/** What measuring one segment needs to be told. @param expectedMidi the next note of a walk, where there is one */
export function measureOptionsOf(
  segment: Segment,
  sampleRateHz: number,
  options: Pick<SurveyRecordingOptions, 'stringPosition' | 'pitchStandardHz'>,
  expectedMidi?: number,
): MeasureOptions {
  return {
    pitchStandardHz: options.pitchStandardHz,
    stringPosition: options.stringPosition,
    onsetIndex: segment.onsetIndex,
    startS: segment.startSample / sampleRateHz,
    ...(expectedMidi === undefined ? {} : { expectedMidi }),
  };
}

export function heardTakeOf(segment: Segment, sampleRateHz: number, outcome: TakeOutcome): HeardTake {
  const onsetS = (segment.startSample + segment.onsetIndex) / sampleRateHz;
  return { outcome, onsetS, hasHole: segment.hasHole };
}
