/** The noise of each change: as stated, times what its part of the compass shows. */
import type { ChangeInterval, ChangeRow, PianoString } from './changeRows.ts';
import { robustDeviation, studentWeight } from './statistics.ts';
import { type Rows, residualsOf, type State } from './weatherState.ts';

/** Parts of the compass whose noise is learnt by themselves, in semitones. */
const REGISTER = 22;
/** Stated uncertainties are trusted within these factors. */
const LEAST_NOISE_FACTOR = 0.35;
const MOST_NOISE_FACTOR = 6;
/** No change is better known than this, whatever is stated. */
const LEAST_SIGMA_CENTS = 0.15;

/**
 * Noise of each change: as stated, or usual for the register, times a factor learnt from the residuals of its part of the compass. Each
 * string's response and rate have taken up two of its changes' freedom, which the factor gives back.
 */
export function updateNoise(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
  strings: readonly PianoString[],
): void {
  const residuals = residualsOf(state, rows, intervals, shapes);
  const newCounts = newChangeCounts(rows);
  const base = rows.of.map((row) => Math.hypot(Math.sqrt(row.varianceCents2), LEAST_SIGMA_CENTS));
  const uneven = rows.of.map((row) => unevenSettlingCents(row, state, newCounts));
  const registerOf = (index: number) => Math.floor(strings[rows.of[index]!.stringIndex]!.midi / REGISTER);
  const grouped = new Map<number, number[]>();
  rows.of.forEach((row, index) => {
    // Against where a string is usually left, what that is wrong by comes again and looks like no noise at all.
    if (!intervals[row.intervalIndex]!.hasBaseline) return;
    const changeCount = rows.byString[row.stringIndex]!.length;
    const freedom = Math.sqrt(changeCount / Math.max(1, changeCount - 1.8));
    const list = grouped.get(registerOf(index)) ?? [];
    // What new strings differ by is largely taken for their rates; what is left of it widens the noise a little, on the safe side.
    list.push((freedom * residuals[index]!) / base[index]!);
    grouped.set(registerOf(index), list);
  });
  const factors = new Map([...grouped].map(([register, list]) => [register, noiseFactor(list)]));
  rows.of.forEach((row, index) => {
    const isSeen = intervals[row.intervalIndex]!.hasBaseline;
    state.sigmas[index] = Math.hypot(base[index]! * (isSeen ? factors.get(registerOf(index))! : 1), uneven[index]!);
    state.weights[index] = Math.min(1, studentWeight(residuals[index]! / state.sigmas[index]!));
  });
}

/**
 * New strings do not settle all alike: each by this share of what the piano falls as a whole, more or less, and the same string always. What
 * comes again in every interval is no noise; so each of them holds it as many times as there are of them.
 */
const UNEVEN_SETTLING = 0.12;
const SETTLING_YEARS = 3;

function isNew({ sinceAnewYears }: ChangeRow): boolean {
  return sinceAnewYears !== null && sinceAnewYears < SETTLING_YEARS;
}

/** By string: how many of its changes are a new string's. */
function newChangeCounts(rows: Rows): number[] {
  return rows.byString.map((list) => list.filter((index) => isNew(rows.of[index]!)).length);
}

function unevenSettlingCents(row: ChangeRow, state: State, newCounts: readonly number[]): number {
  if (!isNew(row)) return 0;
  return UNEVEN_SETTLING * Math.sqrt(newCounts[row.stringIndex]!) * Math.abs(state.common[row.intervalIndex]!);
}

/** Leans on 1 where few changes tell. */
function noiseFactor(standardised: readonly number[]): number {
  const count = standardised.length;
  const learnt = (count * robustDeviation(standardised, 0) ** 2 + 10) / (count + 10);
  return Math.min(MOST_NOISE_FACTOR, Math.max(LEAST_NOISE_FACTOR, Math.sqrt(learnt)));
}
