/** What the survey of a recording hands over to be written. */
import type { NoteReading } from '../piano/reading.ts';

export type NoteOffCurve = {
  readonly midi: number;
  readonly stringPosition: number;
  readonly ratioToCurve: number;
  readonly departureInSigmas: number;
};

/** What a survey of a recording found. Indexes are positions in `readings`. */
export type SurveyFindings = {
  readonly readings: readonly NoteReading[];
  readonly skippedMidi: readonly number[];
  readonly repeated: readonly {
    readonly midi: number;
    readonly keptIndex: number;
    readonly droppedIndexes: readonly number[];
    readonly repeatabilityCents: number | null;
  }[];
  readonly pooledRepeatability: readonly {
    readonly register: 'bass' | 'middle' | 'treble' | 'all';
    readonly scatterCents: number;
    readonly repeatCount: number;
    readonly noteCount: number;
  }[];
  readonly inharmonicity: {
    readonly notes: readonly {
      readonly midi: number;
      readonly inharmonicityB: number;
      readonly standardUncertainty: number;
      /** Of a single note that was not measured. */
      readonly noteStandardUncertainty: number;
    }[];
    /** One sigma of log B. */
    readonly woundSpread: number;
    readonly plainSpread: number;
    readonly standsOut: readonly NoteOffCurve[];
  } | null;
  readonly life: {
    readonly notes: readonly { readonly midi: number; readonly lifeTimeS: number }[];
    readonly spread: number;
    readonly weak: readonly NoteOffCurve[];
  } | null;
  readonly warnings: readonly string[];
};
