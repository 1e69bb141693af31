/**
 * The JSON document of one recording of many notes: the document of `measure`, and what the notes say together.
 *
 * Added to each reading: `inharmonicityBFromCurve`, where B could not be measured, what the curve of the whole instrument says of
 * that note, and its standard uncertainty (the curve's and the spread of notes about it). It is never put in `inharmonicityB`.
 */
import { midiToName } from '../piano/note.ts';
import type { NoteReading } from '../piano/reading.ts';
import { type MeasureDocument, measured, type ReadingDocument, readingDocument } from './measureDocument.ts';
import type { NoteOffCurve, SurveyFindings } from './surveyFindings.ts';

export type SurveyFileDocument = Omit<MeasureDocument, 'readings'> & {
  readonly readings: readonly SurveyReadingDocument[];
  /** Notes of the compass that were never heard. */
  readonly skipped: readonly string[];
  readonly repeated: readonly RepeatDocument[];
  /** What strikes of one string differ by, over several notes; empty where too few were repeated. */
  readonly pooledRepeatability: readonly PooledRepeatabilityDocument[];
  /** B along the compass; null where too few notes were measured. */
  readonly inharmonicityCurve: InharmonicityCurveDocument | null;
  /** How long notes live along the compass; null where too few were measured. */
  readonly lifeCurve: LifeCurveDocument | null;
};

export type SurveyReadingDocument = ReadingDocument & {
  /** Null where B was measured, or where there is no curve. */
  readonly inharmonicityBFromCurve: number | null;
  readonly inharmonicityBFromCurveU: number | null;
};

/** Indexes into `readings`. */
export type RepeatDocument = {
  readonly note: string;
  readonly kept: number;
  readonly dropped: readonly number[];
  /**
   * What strikes of this note differ by in partial 1, one sigma: of its own takes, or of all repeated notes of its register where
   * that is larger. `centsU` and `partial1HzU` of the kept reading are no smaller. Null where no two takes can be compared: at
   * least two must be usable and within 10 dB of the kept one.
   */
  readonly repeatabilityCents: number | null;
};

export type PooledRepeatabilityDocument = {
  /** Up to B2, from C3, from C6; or all of them. */
  readonly register: 'bass' | 'middle' | 'treble' | 'all';
  readonly repeatabilityCents: number;
  /** Takes beyond the first of each note, and how many notes. */
  readonly repeats: number;
  readonly notes: number;
};

export type InharmonicityCurveDocument = {
  /** Every note of the compass. `inharmonicityBU` is the curve's own; notes stand about it as `spreadPercent` says. */
  readonly notes: readonly {
    readonly note: string;
    readonly inharmonicityB: number | null;
    readonly inharmonicityBU: number | null;
  }[];
  /** Spread of single notes about the curve, one sigma, on wound strings (taken to end at E2) and on plain ones. */
  readonly spreadPercent: { readonly wound: number; readonly plain: number };
  /** More than chance, and by more than half a gauge: a wrong take, wrongly numbered partials or a wrong wire. */
  readonly standsOut: readonly StandsOutDocument[];
};

export type LifeCurveDocument = {
  readonly notes: readonly { readonly note: string; readonly lifeTimeS: number | null }[];
  readonly spreadPercent: number;
  /** Notes that live less than half as long as the curve says, by more than chance. */
  readonly weak: readonly StandsOutDocument[];
};

/** `ratio` is the measured figure over the curve's; `sigmas` how far its logarithm is off, in standard uncertainties. */
export type StandsOutDocument = {
  readonly note: string;
  readonly string: number;
  readonly ratio: number;
  readonly sigmas: number;
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
    readings: findings.readings.map((reading) => surveyReadingDocument(reading, findings.inharmonicity)),
    warnings: [...fileWarnings, ...findings.warnings],
    skipped: findings.skippedMidi.map(midiToName),
    repeated: findings.repeated.map(({ midi, keptIndex, droppedIndexes, repeatabilityCents }) => ({
      note: midiToName(midi),
      kept: keptIndex,
      dropped: droppedIndexes,
      repeatabilityCents,
    })),
    pooledRepeatability: findings.pooledRepeatability.map((pool) => ({
      register: pool.register,
      repeatabilityCents: pool.scatterCents,
      repeats: pool.repeatCount,
      notes: pool.noteCount,
    })),
    inharmonicityCurve: findings.inharmonicity && inharmonicityDocument(findings.inharmonicity),
    lifeCurve: findings.life && lifeDocument(findings.life),
  };
}

function surveyReadingDocument(
  reading: NoteReading,
  inharmonicity: SurveyFindings['inharmonicity'],
): SurveyReadingDocument {
  const isMeasured = reading.inharmonicityB !== null;
  const curve = isMeasured ? undefined : inharmonicity?.notes.find(({ midi }) => midi === reading.midi);
  return {
    ...readingDocument(reading),
    inharmonicityBFromCurve: measured(curve?.inharmonicityB ?? null),
    inharmonicityBFromCurveU: measured(curve?.noteStandardUncertainty ?? null),
  };
}

function inharmonicityDocument(curve: NonNullable<SurveyFindings['inharmonicity']>): InharmonicityCurveDocument {
  return {
    notes: curve.notes.map(({ midi, inharmonicityB, standardUncertainty }) => ({
      note: midiToName(midi),
      inharmonicityB: measured(inharmonicityB),
      inharmonicityBU: measured(standardUncertainty),
    })),
    spreadPercent: { wound: 100 * curve.woundSpread, plain: 100 * curve.plainSpread },
    standsOut: curve.standsOut.map(offCurveDocument),
  };
}

function lifeDocument({ notes, spread, weak }: NonNullable<SurveyFindings['life']>): LifeCurveDocument {
  return {
    notes: notes.map(({ midi, lifeTimeS }) => ({ note: midiToName(midi), lifeTimeS: measured(lifeTimeS) })),
    spreadPercent: 100 * spread,
    weak: weak.map(offCurveDocument),
  };
}

function offCurveDocument({ midi, stringPosition, ratioToCurve, departureInSigmas }: NoteOffCurve): StandsOutDocument {
  return { note: midiToName(midi), string: stringPosition, ratio: ratioToCurve, sigmas: departureInSigmas };
}
