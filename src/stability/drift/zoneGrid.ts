/** Own changes by note and interval, a note's strings together: what stretches of notes are judged from. */
import type { PianoString } from './changeRows.ts';
import type { OwnHistory } from './ownChanges.ts';
import { fitRate, trustedWeights } from './stringRates.ts';

export type NoteGrid = {
  readonly midis: readonly number[];
  /** By note, then interval; NaN where there is no change. */
  readonly means: readonly Float64Array[];
  readonly variances: readonly Float64Array[];
  /** Residuals less the strings' own rates, likewise. */
  readonly residuals: readonly Float64Array[];
};

/** A single wild change must not make a stretch of notes slip. */
const MOST_SIGMA = 4;

/**
 * Plain means of limited values, so their noise is what the tails bring, too. What a string's response differs from its neighbours' course
 * by is taken out.
 */
export function noteGrid(
  strings: readonly PianoString[],
  histories: readonly OwnHistory[],
  intervalCount: number,
): NoteGrid {
  const midis = [...new Set(strings.map((string) => string.midi))].sort((a, b) => a - b);
  const place = new Map(midis.map((midi, index) => [midi, index]));
  const cells = () => midis.map(() => new Float64Array(intervalCount));
  const [weights, sums, left] = [cells(), cells(), cells()];
  const parts = histories.map(partsOf);
  const tails = rootMeanSquare(parts.flatMap((own) => own.map(({ off }) => Math.min(MOST_SIGMA, Math.abs(off)))));
  parts.forEach((own, i) => {
    const note = place.get(strings[i]!.midi)!;
    for (const { intervalIndex: k, steadyCents, off, sigmaCents } of own) {
      const weight = 1 / (tails * sigmaCents) ** 2;
      // Limited about the string's own rate, so that a steady fall is not limited.
      const limited = Math.max(-MOST_SIGMA, Math.min(MOST_SIGMA, off)) * sigmaCents;
      weights[note]![k]! += weight;
      sums[note]![k]! += weight * (steadyCents + limited);
      left[note]![k]! += weight * limited;
    }
  });
  const mean = (all: Float64Array[]) =>
    all.map((row, n) => row.map((value, k) => (weights[n]![k]! > 0 ? value / weights[n]![k]! : Number.NaN)));
  return {
    midis,
    means: mean(sums),
    variances: weights.map((row) => row.map((value) => (value > 0 ? 1 / value : Infinity))),
    residuals: mean(left),
  };
}

/** Each change as what the string's own rate says, and how far it lies off that and off its response, in deviations. */
function partsOf(history: OwnHistory) {
  const { changes, responseDeviation } = history;
  const trust = trustedWeights(history);
  const weights = changes.map(({ sigmaCents }, j) => trust[j]! / sigmaCents ** 2);
  const { rate, strayedResponse } = fitRate(changes, weights, responseDeviation);
  return changes.map(({ intervalIndex, years, cents, season, sigmaCents }) => ({
    intervalIndex,
    steadyCents: rate * years,
    off: (cents - rate * years - strayedResponse * season) / sigmaCents,
    sigmaCents,
  }));
}

function rootMeanSquare(values: readonly number[]): number {
  const squares = values.reduce((sum, value) => sum + value * value, 0);
  return Math.max(1, Math.sqrt(squares / Math.max(1, values.length)));
}

/** Each string's rate and response have taken up this much of its changes' freedom. */
const FREEDOM_TAKEN = 1.8;
/** As if so many stretches of unpatched noise had been seen. */
const SEEN = 6;

/**
 * By length of a stretch: how much larger its mean's variance is than independent notes would make it, at least 1. Neighbouring notes
 * move together beyond what any smooth course along a bridge says: a rib, a patch of board. Learnt from the residuals of all stretches.
 */
export function patchFactors({ residuals, variances }: NoteGrid, intervalCount: number, longest: number): number[] {
  const freedom = intervalCount / Math.max(1, intervalCount - FREEDOM_TAKEN);
  const factors: number[] = [1];
  for (let length = 1; length <= longest; length++) {
    let sum = SEEN;
    let count = SEEN;
    for (let k = 0; k < intervalCount; k++) {
      for (let first = 0; first + length <= residuals.length; first++) {
        const square = standardisedSquare(residuals, variances, first, length, k);
        if (square === null) continue;
        // Overlapping stretches tell the same again.
        sum += Math.min(MOST_SQUARE, freedom * square) / length;
        count += 1 / length;
      }
    }
    factors.push(Math.max(1, sum / count));
  }
  return factors;
}

const MOST_SQUARE = 25;

function standardisedSquare(
  residuals: NoteGrid['residuals'],
  variances: NoteGrid['variances'],
  first: number,
  length: number,
  k: number,
): number | null {
  let top = 0;
  let weight = 0;
  for (let n = first; n < first + length; n++) {
    const variance = variances[n]![k]!;
    if (!Number.isFinite(variance)) continue;
    top += residuals[n]![k]! / variance;
    weight += 1 / variance;
  }
  return weight > 0 ? (top * top) / weight : null;
}
