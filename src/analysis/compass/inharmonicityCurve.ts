/**
 * Inharmonicity along the whole compass, from the notes of one survey.
 *
 * Model: B(m) = e^(treble asymptote) + e^(bass asymptote), both straight in the MIDI number m (F. Rigaud, B. David, L. Daudet,
 * J. Acoust. Soc. Am. 133 (2013) 3107–3118), times what the instrument departs from that slowly along the compass, times a step
 * at the end of the bass bridge where that is known. Fitted in log B, robustly, each note weighted by its own uncertainty and by
 * the spread of log B between notes, which is fitted too. The prior of the treble pair is tight and that of the bass pair loose,
 * as pianos differ little in the one and much in the other (ibid.).
 *
 * Valid where most notes are measured rightly: beyond a third of wrong ones in a stretch the curve follows them. A deviation that
 * a whole run of notes shares (six or more: a change of gauge in the scale) is the instrument's own and not called.
 * Where B jumps between the bridges by a third and nobody said where, notes beside the jump may be called wrongly. Measured by us
 * on simulated scales of 82 notes: 2 to 5 % of sound instruments have a note called, 29 % with such a jump untold and 4 % with it told;
 * wire one gauge off (5 % in diameter) is found in 3 of 4 cases where notes scatter by 2 %, in 1 of 4 where they scatter by 3 %.
 */
import type { StringPosition } from '../../piano/reading.ts';
import type { CurveFigure } from './curveModel.ts';
import { inharmonicityModel } from './inharmonicityModel.ts';
import { type CurveFit, curveValue, fitRobustCurve } from './robustCurve.ts';
import { beyondChance, chanceBeyond } from './standsOut.ts';

export type MeasuredInharmonicity = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly inharmonicityB: number;
  readonly inharmonicityBStandardUncertainty: number;
};

export type InharmonicityNote = MeasuredInharmonicity & {
  /** B over what the curve that the other notes make says. */
  readonly ratioToCurve: number;
  /** log of that ratio over its standard uncertainty, the spread between notes included. */
  readonly departureInSigmas: number;
  /** More than chance, and more than half a gauge: a wrong take, wrongly numbered partials, or another wire than its neighbours'. */
  readonly standsOut: boolean;
};

/** Plain data that inharmonicityAt reads. */
export type FittedCurve = {
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly bassBridgeTopMidi: number | null;
  /** Spread of log B from note to note about the curve, on wound strings and on plain ones: 0.05 is 5 %. */
  readonly woundSpread: number;
  readonly plainSpread: number;
};

export type InharmonicityCurve = FittedCurve & {
  /** In the order given. */
  readonly notes: readonly InharmonicityNote[];
};

export type InharmonicityAt = {
  readonly inharmonicityB: number;
  /** Of the curve. */
  readonly standardUncertainty: number;
  /** Of a single note that was not measured: the curve's uncertainty and the notes' spread about it. */
  readonly noteStandardUncertainty: number;
};

/** Fewer notes than this give no curve: the two asymptotes alone take four. Chosen. */
const LEAST_CURVE_NOTES = 8;
/** Of the notes called, no more than this share are called by chance on average. Common practice. */
export const FALSE_SHARE = 0.05;
/**
 * Least departure in log B that is called, however sure. Half a gauge of music wire is 0.025 mm, 2.5 % of 1 mm, and moves B by its
 * square, 5 %; below that nothing can be concluded about the wire.
 */
const LEAST_DEPARTURE = 0.05;
/**
 * No piano string has a B outside this: such a figure comes from wrongly numbered partials or a fit that ran against its stop. It
 * has no part in the curve and always stands out. Chosen: half the range 2e-5 to 3e-2 that is held plausible, and three times it.
 */
const PLAUSIBLE_B = { least: 1e-5, most: 0.1 };

/**
 * @param measured notes whose B was measured, of takes that can be used; the kept one where a string was taken several times
 * @param bassBridgeTopMidi the highest note on the bass bridge; null where nobody said
 * @returns null with fewer than eight different notes, or where the fit does not settle
 * @throws {RangeError} if a B or its uncertainty is not a finite number above zero
 */
export function fitInharmonicityCurve(
  measured: readonly MeasuredInharmonicity[],
  bassBridgeTopMidi: number | null = null,
): InharmonicityCurve | null {
  const plausible = measured.filter(isPlausible);
  const figures = plausible.map(logFigure);
  if (new Set(figures.map(({ midi }) => midi)).size < LEAST_CURVE_NOTES) return null;
  const breakMidi = hasNotesOnBothSides(figures, bassBridgeTopMidi) ? bassBridgeTopMidi : null;
  const fit = fitRobustCurve(inharmonicityModel(breakMidi), figures);
  if (!fit) return null;
  const { parameters, covariance } = fit;
  const [woundSpread = 0, plainSpread = 0] = fit.spreads;
  const curve = { parameters, covariance, bassBridgeTopMidi: breakMidi, woundSpread, plainSpread };
  const judged = new Map(judgedNotes(plausible, fit).map((note, index) => [plausible[index], note]));
  return { ...curve, notes: measured.map((note) => judged.get(note) ?? implausibleNote(curve, note)) };
}

/** What the curve says of a note, measured or not. @throws {RangeError} if midi is not finite */
export function inharmonicityAt(curve: FittedCurve, midi: number): InharmonicityAt {
  if (!Number.isFinite(midi)) throw new RangeError(`midi must be finite, got ${midi}`);
  const model = inharmonicityModel(curve.bassBridgeTopMidi);
  const { value, standardUncertainty } = curveValue(model, curve, midi);
  const inharmonicityB = Math.exp(value);
  const spread = model.spread.groupOf(midi) === 0 ? curve.woundSpread : curve.plainSpread;
  return {
    inharmonicityB,
    standardUncertainty: inharmonicityB * standardUncertainty,
    noteStandardUncertainty: inharmonicityB * Math.hypot(standardUncertainty, spread),
  };
}

function isPlausible(note: MeasuredInharmonicity): boolean {
  const { midi, inharmonicityB, inharmonicityBStandardUncertainty } = note;
  if (!(inharmonicityB > 0 && inharmonicityBStandardUncertainty > 0))
    throw new RangeError(
      `inharmonicityB and its uncertainty must be above zero, got ${inharmonicityB} ± ${inharmonicityBStandardUncertainty} at ${midi}`,
    );
  return inharmonicityB >= PLAUSIBLE_B.least && inharmonicityB <= PLAUSIBLE_B.most;
}

function logFigure({ midi, inharmonicityB, inharmonicityBStandardUncertainty }: MeasuredInharmonicity): CurveFigure {
  const standardUncertainty = inharmonicityBStandardUncertainty / inharmonicityB;
  return { midi, value: Math.log(inharmonicityB), standardUncertainty };
}

function implausibleNote(curve: FittedCurve, note: MeasuredInharmonicity): InharmonicityNote {
  const { inharmonicityB, noteStandardUncertainty } = inharmonicityAt(curve, note.midi);
  const ratioToCurve = note.inharmonicityB / inharmonicityB;
  const departureInSigmas = (Math.log(ratioToCurve) * inharmonicityB) / noteStandardUncertainty;
  return { ...note, ratioToCurve, departureInSigmas, standsOut: true };
}

/** A step can be told only where both sides of it have notes. */
function hasNotesOnBothSides(figures: readonly CurveFigure[], topMidi: number | null): boolean {
  if (topMidi === null) return false;
  const below = new Set(figures.filter(({ midi }) => midi <= topMidi).map(({ midi }) => midi)).size;
  const all = new Set(figures.map(({ midi }) => midi)).size;
  return below >= LEAST_NOTES_BESIDE_STEP && all - below >= LEAST_NOTES_BESIDE_STEP;
}

const LEAST_NOTES_BESIDE_STEP = 3;

function judgedNotes(measured: readonly MeasuredInharmonicity[], fit: CurveFit): InharmonicityNote[] {
  const ratios = fit.departures.map(({ departure, standardUncertainty }) => departure / standardUncertainty);
  const isRare = beyondChance(
    ratios.map((ratio) => 2 * chanceBeyond(Math.abs(ratio), fit.freedom)),
    FALSE_SHARE,
  );
  return measured.map((note, index) => {
    const departure = fit.departures[index]?.departure ?? 0;
    const standsOut = (isRare[index] ?? false) && Math.abs(departure) >= LEAST_DEPARTURE;
    return { ...note, ratioToCurve: Math.exp(departure), departureInSigmas: ratios[index] ?? 0, standsOut };
  });
}
