/**
 * Each note against what all others have in common, again and again without those that are likelier wrong than right: a wrong wire
 * does not bend the curve by which its neighbours are judged, nor count as scatter of the right ones.
 */
import type { CurveModel } from '../../analysis/compass/curveModel.ts';
import { type CurveDeparture, type CurveFit, curveValue, fitRobustCurve } from '../../analysis/compass/robustCurve.ts';
import { type DiameterRoom, hasRoom, roomFor } from './diameterRun.ts';
import type { MeasuredNote } from './measuredNotes.ts';
import { noteOdds, type StringOdds } from './noteOdds.ts';

export type JudgedString = {
  readonly odds: StringOdds;
  readonly departure: number;
  readonly standardUncertainty: number;
  /** The stated diameter is out of line with those beside it that are thought to be right. */
  readonly isOutOfRun: boolean;
};

export type JudgedNotes = {
  readonly fit: CurveFit;
  /** In the order of the notes, and of their strings. */
  readonly notes: readonly (readonly JudgedString[])[];
};

/** Chosen: a string is pointed out where it is likelier wrong than right. */
export const WRONG_PROBABILITY = 0.5;
/**
 * How many notes are wrong though their size fits their neighbours is learnt from the notes: before, as if one had been wrong among
 * thirty. A piano on which nothing is found is thought sounder in the end, one on which something is found less so. Chosen.
 */
const KNOWN_WRONG = 1;
const KNOWN_NOTES = 30;
/** What is thought of the notes settles in a few rounds; where it does not, the last round stands. */
const MOST_ROUNDS = 8;
const SETTLED_SHARE = 0.001;
/** More wrong notes than this, and what is common to the others cannot be told without them. Chosen. */
const MOST_LEFT_OUT_SHARE = 0.25;

/** What the last round thinks, for the next one to go by. */
type Belief = { readonly leftOut: ReadonlySet<MeasuredNote>; readonly wrongShare: number };

/** Undefined where the fit does not settle. */
export function judgeNotes(model: CurveModel, notes: readonly MeasuredNote[]): JudgedNotes | undefined {
  let belief: Belief = { leftOut: new Set(), wrongShare: KNOWN_WRONG / KNOWN_NOTES };
  let judged: JudgedNotes | undefined;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    judged = judgeWith(model, notes, belief);
    if (!judged) return undefined;
    const next = beliefAfter(notes, judged);
    if (next.leftOut.size > MOST_LEFT_OUT_SHARE * notes.length || isSettled(belief, next)) break;
    belief = next;
  }
  return judged;
}

function beliefAfter(notes: readonly MeasuredNote[], { notes: strings }: JudgedNotes): Belief {
  const wrong = strings.map((own) => Math.max(...own.map(({ odds }) => 1 - odds.statedProbability)));
  const inRun = wrong.filter((_, index) => !strings[index]?.some(({ isOutOfRun }) => isOutOfRun));
  return {
    leftOut: new Set(notes.filter((_, index) => (wrong[index] ?? 0) >= WRONG_PROBABILITY)),
    wrongShare: inRun.reduce((sum, probability) => sum + probability, KNOWN_WRONG) / (KNOWN_NOTES + inRun.length),
  };
}

function isSettled(one: Belief, next: Belief): boolean {
  const isSame = one.leftOut.size === next.leftOut.size && [...one.leftOut].every((note) => next.leftOut.has(note));
  return isSame && Math.abs(one.wrongShare - next.wrongShare) < SETTLED_SHARE;
}

function judgeWith(
  model: CurveModel,
  notes: readonly MeasuredNote[],
  { leftOut, wrongShare }: Belief,
): JudgedNotes | undefined {
  const kept = notes.filter((note) => !leftOut.has(note));
  const fit = fitRobustCurve(
    model,
    kept.map(({ figure }) => figure),
  );
  if (!fit) return undefined;
  const ofKept = new Map(kept.map((note, index) => [note, fit.departures[index]]));
  const doubted = new Set([...leftOut].map(({ figure }) => figure.midi));
  return {
    fit,
    notes: notes.map((note) => {
      const room = roomFor(note.plain.section, note.figure.midi, doubted);
      const against = ofKept.get(note) ?? againstCurve(model, fit, note);
      return judgeStrings(note, against, { freedom: fit.freedom, room, wrongShare });
    }),
  };
}

function againstCurve(model: CurveModel, fit: CurveFit, { figure }: MeasuredNote): CurveDeparture {
  const { value, standardUncertainty } = curveValue(model, fit, figure.midi);
  return {
    departure: figure.value - value,
    standardUncertainty: Math.hypot(figure.standardUncertainty, fit.spreads[0] ?? 0, standardUncertainty),
  };
}

type Circumstances = { readonly freedom: number; readonly room: DiameterRoom; readonly wrongShare: number };

/** @param against of all the note's strings together */
function judgeStrings(
  { plain, strings, figure }: MeasuredNote,
  against: CurveDeparture,
  circumstances: Circumstances,
): JudgedString[] {
  const ofReadings = strings.reduce((sum, { readingSigma }) => sum + readingSigma ** -2, 0) ** -1;
  const commonSigma = Math.sqrt(Math.max(0, against.standardUncertainty ** 2 - ofReadings));
  const departures = strings.map(({ value }) => against.departure + value - figure.value);
  const readingSigmas = strings.map(({ readingSigma }) => readingSigma);
  const { diameterMm: statedDiameterMm } = plain;
  const odds = noteOdds({ statedDiameterMm, departures, readingSigmas, commonSigma, ...circumstances });
  return odds.map((own, index) => ({
    odds: own,
    departure: departures[index] ?? 0,
    standardUncertainty: Math.hypot(commonSigma, readingSigmas[index] ?? 0),
    isOutOfRun: !hasRoom(circumstances.room, statedDiameterMm),
  }));
}
