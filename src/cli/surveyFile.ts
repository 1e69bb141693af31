/** One recording of many notes becomes one document; it is read block by block. */
import type { AudioStream } from '../files/audio/audioStream.ts';
import { type SurveyFileDocument, surveyFileDocument } from '../files/surveyFileDocument.ts';
import type { SurveyFindings } from '../files/surveyFindings.ts';
import type { Compass } from '../piano/compass.ts';
import type { StringPosition } from '../piano/reading.ts';
import { assembleSurvey, type SurveyDocument } from '../survey/assembleSurvey.ts';
import { surveyCurves } from '../survey/surveyCurves.ts';
import { createTakeSplitter } from '../survey/takeSplitter.ts';
import { withRecording } from './openRecording.ts';
import { measureTakesInOrder } from './takesInOrder.ts';
import { createThreadPool, type ThreadPool } from './threadPool.ts';

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
    const pool = createThreadPool(Number.POSITIVE_INFINITY);
    try {
      const findings = await survey(audio, options, pool, onProgress);
      const { sampleRateHz, warnings } = audio;
      const { pitchStandardHz } = options;
      const fileWarnings = warnings.map((warning) => warning.message);
      const together = { ...findings, ...curveFindings(findings, options.compass) };
      return surveyFileDocument({ file, sampleRateHz, pitchStandardHz }, together, fileWarnings);
    } finally {
      await pool.close();
    }
  });
}

async function survey(
  audio: AudioStream,
  options: SurveyFileOptions,
  pool: ThreadPool,
  onProgress: (line: string) => void,
): Promise<SurveyDocument> {
  const splitter = createTakeSplitter(audio.sampleRateHz);
  const takes = measureTakesInOrder(pool, audio.sampleRateHz, options);
  let sampleCount = 0;
  for await (const block of audio.blocks()) {
    for (const segment of splitter.push(block)) await takes.add(segment);
    sampleCount += block.length;
    onProgress(progressLine(sampleCount / audio.sampleRateHz, audio));
  }
  for (const segment of splitter.finish()) await takes.add(segment);
  return assembleSurvey(await takes.finish(), options.compass);
}

/** A recording does not say where its bass bridge ends. */
function curveFindings(survey: SurveyDocument, compass: Compass): Pick<SurveyFindings, 'inharmonicity' | 'life'> {
  const dropped = new Set(survey.repeated.flatMap(({ droppedIndexes }) => droppedIndexes));
  const kept = survey.readings.filter((_, index) => !dropped.has(index));
  const { inharmonicity, life } = surveyCurves(kept, compass, null);
  return {
    inharmonicity: inharmonicity && {
      ...inharmonicity,
      notes: inharmonicity.curve,
      standsOut: inharmonicity.notes.filter(({ standsOut }) => standsOut),
    },
    life: life && { ...life, notes: life.curve, weak: life.notes.filter(({ isWeak }) => isWeak) },
  };
}

function progressLine(heardS: number, { statedDurationS }: AudioStream): string {
  const of = statedDurationS === null ? '' : ` of ${Math.round(statedDurationS)}`;
  return `${Math.round(heardS)}${of} s heard`;
}
