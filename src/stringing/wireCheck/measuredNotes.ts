/** Measured inharmonicity of the plain strings of a schedule, note by note, over what is expected of them. */
import type { CurveFigure } from '../../analysis/compass/curveModel.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { PlainNote } from './plainNotes.ts';

export type StringInharmonicity = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly inharmonicityB: number;
  readonly inharmonicityBStandardUncertainty: number;
};

export type MeasuredString = {
  readonly reading: StringInharmonicity;
  /** log of measured over expected B. */
  readonly value: number;
  readonly readingSigma: number;
};

export type MeasuredNote = {
  readonly plain: PlainNote;
  /** In order of position. */
  readonly strings: readonly MeasuredString[];
  /** Of all strings of the note together; its uncertainty is that of measuring it. */
  readonly figure: CurveFigure;
};

/** log B that an interpolated length leaves open: 1 % of the length. */
const INTERPOLATED_LENGTH_SIGMA = 0.04;

/**
 * In order of note; readings of notes that are not in `plain` are passed over.
 * @throws {RangeError} if a B or its uncertainty is not a finite number above zero
 */
export function measuredNotes(
  plain: ReadonlyMap<number, PlainNote>,
  measured: readonly StringInharmonicity[],
): MeasuredNote[] {
  const midis = [...new Set(measured.map(({ midi }) => midi))].sort((a, b) => a - b);
  return midis.flatMap((midi) => {
    const note = plain.get(midi);
    if (!note) return [];
    const own = measured.filter((reading) => reading.midi === midi).sort((a, b) => a.stringPosition - b.stringPosition);
    const strings = own.map((reading) => measuredString(note, reading));
    return [{ plain: note, strings, figure: figureOf(midi, note, strings) }];
  });
}

function measuredString({ expectedB }: PlainNote, reading: StringInharmonicity): MeasuredString {
  const { midi, inharmonicityB, inharmonicityBStandardUncertainty } = reading;
  if (!(inharmonicityB > 0 && inharmonicityBStandardUncertainty > 0))
    throw new RangeError(
      `inharmonicityB and its uncertainty must be above zero, got ${inharmonicityB} ± ${inharmonicityBStandardUncertainty} at ${midi}`,
    );
  const readingSigma = inharmonicityBStandardUncertainty / inharmonicityB;
  return { reading, value: Math.log(inharmonicityB / expectedB), readingSigma };
}

function figureOf(midi: number, { isLengthInterpolated }: PlainNote, strings: readonly MeasuredString[]): CurveFigure {
  const precision = strings.reduce((sum, { readingSigma }) => sum + readingSigma ** -2, 0);
  const sum = strings.reduce((total, { value, readingSigma }) => total + value * readingSigma ** -2, 0);
  return {
    midi,
    value: sum / precision,
    standardUncertainty: Math.hypot(precision ** -0.5, isLengthInterpolated ? INTERPOLATED_LENGTH_SIGMA : 0),
  };
}
