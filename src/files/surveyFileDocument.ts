/** The JSON document of one recording of many notes. */
import { midiToName } from '../piano/note.ts';
import type { NoteReading } from '../piano/reading.ts';
import { readingDocument, type SurveyFileDocument } from './measureDocument.ts';

/** What a survey of a recording found. Indexes are positions in `readings`. */
export type SurveyFindings = {
  readonly readings: readonly NoteReading[];
  readonly skippedMidi: readonly number[];
  readonly repeated: readonly {
    readonly midi: number;
    readonly keptIndex: number;
    readonly droppedIndexes: readonly number[];
  }[];
  readonly warnings: readonly string[];
};

export type SurveyFile = { readonly file: string; readonly sampleRateHz: number; readonly pitchStandardHz: number };

export function surveyFileDocument(
  { file, sampleRateHz, pitchStandardHz }: SurveyFile,
  findings: SurveyFindings,
  fileWarnings: readonly string[],
): SurveyFileDocument {
  return {
    file,
    sampleRateHz,
    pitchStandardHz,
    readings: findings.readings.map(readingDocument),
    warnings: [...fileWarnings, ...findings.warnings],
    skipped: findings.skippedMidi.map(midiToName),
    repeated: findings.repeated.map(({ midi, keptIndex, droppedIndexes }) => ({
      note: midiToName(midi),
      kept: keptIndex,
      dropped: droppedIndexes,
    })),
  };
}
