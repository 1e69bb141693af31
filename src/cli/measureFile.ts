/** One recording of one note becomes one document. */
import { type MeasureDocument, readingDocument } from '../files/measureDocument.ts';
import type { StringPosition } from '../piano/reading.ts';
import { noteOfRecording } from './noteOfRecording.ts';
import { withRecording } from './openRecording.ts';
import { UsageFault } from './terminal.ts';

/** Plain data, so that it can be handed to another thread. */
export type MeasureJob = {
  readonly file: string;
  readonly pitchStandardHz: number;
  readonly stringPosition: StringPosition;
  /** Undefined where the note is to be found. */
  readonly midi: number | undefined;
};

export type MeasuredFile = {
  readonly document: MeasureDocument;
  /** Null where the file could be read and measured. */
  readonly fault: FileFault | null;
};

export type FileFault = {
  /** With the file's name. */
  readonly message: string;
  /** 2 where the file cannot be read, 1 where the fault is ours. */
  readonly exitStatus: 1 | 2;
};

/** Never rejects: what goes wrong with one file is a warning in its document and a `fault`, and does not stop the others. */
export async function measureFile(job: MeasureJob): Promise<MeasuredFile> {
  try {
    return { document: await measuredDocument(job), fault: null };
  } catch (error) {
    const fault = faultOf(job.file, error);
    const { file, pitchStandardHz } = job;
    return { document: { file, sampleRateHz: null, pitchStandardHz, readings: [], warnings: [fault.message] }, fault };
  }
}

function measuredDocument({ file, pitchStandardHz, stringPosition, midi }: MeasureJob): Promise<MeasureDocument> {
  return withRecording(file, async (audio) => {
    const options = { pitchStandardHz, stringPosition, ...(midi === undefined ? {} : { midi }) };
    const { reading, warnings } = await noteOfRecording(audio, options);
    return {
      file,
      sampleRateHz: audio.sampleRateHz,
      pitchStandardHz,
      readings: reading ? [readingDocument(reading)] : [],
      warnings: [...audio.warnings.map((warning) => warning.message), ...warnings],
    };
  });
}

function faultOf(file: string, error: unknown): FileFault {
  if (error instanceof UsageFault) return { message: error.message, exitStatus: 2 };
  const what = error instanceof Error ? error.message : String(error);
  return { message: `${file} could not be measured because of a fault in Stillpin: ${what}`, exitStatus: 1 };
}
