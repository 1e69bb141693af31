/**
 * What the whole instrument did in each interval, so that what single strings did by themselves is left.
 *
 * change(i,k) = d_k + a_k·h_i + smooth_k(i) + R_i·years_k + noise. d_k moves all strings alike (temperature, clock, pitch standard, settling
 * wire); a_k is the season, in %RH where hygrometers were read, and h_i a string's response to it, smooth along each bridge and
 * its own for left, centre and right strings; smooth_k is a step between the bridges and a slope along each, small and at random;
 * R_i is the string's own steady rate. Fitted by turns (alternating least squares), each turn with Student-t weights, so that
 * slipping pins, mis-set notes and wrong takes do not bend what is common.
 */
import type { ChangeInterval, ChangeRow, PianoString } from './changeRows.ts';
import { type SmoothResponse, smoothResponse, usualResponse } from './humidityResponse.ts';
import { solveRidge } from './ridge.ts';
import { shapesOf } from './shapes.ts';
import { median, robustDeviation, studentWeight } from './statistics.ts';

export type WeatherFit = {
  /** Response of each string, cents per %RH (or per unit of season where humidity is not known). */
  readonly responses: Float64Array;
  readonly responseUncertainties: Float64Array;
  /** The responses' course along each bridge, and how far a single string may stray from it. */
  readonly responseCourse: SmoothResponse;
  readonly isHumidityKnown: boolean;
  /** What the instrument did as a whole, season taken out: the mean of d_k + smooth_k over its strings. */
  readonly commonCents: Float64Array;
  /** a_k. */
  readonly seasons: Float64Array;
  /**
   * For each row: the change with d_k, the season by the course of the responses, and the reversing part of smooth_k taken out. What
   * remains is the string's own: a rate, and what its own response differs from the course by.
   */
  readonly ownCents: Float64Array;
  /** For each row: standard deviation of its noise. */
  readonly sigmas: Float64Array;
  /** For each row: residual after the string's own steady rate, too. */
  readonly residuals: Float64Array;
  /** Standard deviation, in cents, of each shape of smooth_k from interval to interval. */
  readonly shapeDeviations: readonly number[];
};

const TURNS = 14;
/** How far the wood's real state may lie from what a hygrometer says on the day: it lags by weeks (%RH). */
const HYGROMETER_PCT = 4;
const START_SIGMA_CENTS = 1;

type Rows = { readonly of: readonly ChangeRow[]; readonly byString: number[][]; readonly byInterval: number[][] };

export function fitWeather(
  strings: readonly PianoString[],
  intervals: readonly ChangeInterval[],
  changes: readonly ChangeRow[],
  bassBridgeTopMidi: number,
): WeatherFit {
  const rows = indexRows(changes, strings.length, intervals.length);
  const shapes = shapesOf(strings, bassBridgeTopMidi);
  const isHumidityKnown = knowsHumidity(intervals, rows);
  const state = startState(strings, intervals, rows, shapes, bassBridgeTopMidi, isHumidityKnown);
  const shapeDeviations = shapes.map(() => 1.5);
  for (let turn = 0; turn < TURNS; turn++) {
    fitIntervals({ state, rows, intervals, shapes, shapeDeviations, isHumidityKnown });
    foldIntoStrings(state, rows, intervals, isHumidityKnown);
    fitStrings(state, rows, intervals, shapes, strings, bassBridgeTopMidi);
    updateNoise(state, rows, intervals, shapes, strings);
    if (turn >= 3) updateShapeDeviations(state, shapeDeviations);
  }
  if (isHumidityKnown) anchorSeasons(state, intervals);
  const course = smoothResponse(strings, state.responses, state.responseUncertainties, bassBridgeTopMidi);
  return report(state, rows, intervals, shapes, shapeDeviations, isHumidityKnown, course);
}

function indexRows(of: readonly ChangeRow[], stringCount: number, intervalCount: number): Rows {
  const byString: number[][] = Array.from({ length: stringCount }, () => []);
  const byInterval: number[][] = Array.from({ length: intervalCount }, () => []);
  of.forEach((row, index) => {
    byString[row.stringIndex]!.push(index);
    byInterval[row.intervalIndex]!.push(index);
  });
  return { of, byString, byInterval };
}

/** Three intervals with humidity at both ends, and some spread, let its effect be learnt. */
function knowsHumidity(intervals: readonly ChangeInterval[], rows: Rows): boolean {
  const known = intervals.filter(
    (interval, k) => interval.humidityChangePct !== null && rows.byInterval[k]!.length > 0,
  );
  const spread = known.reduce((most, interval) => Math.max(most, Math.abs(interval.humidityChangePct ?? 0)), 0);
  return known.length >= 3 && known.length >= 0.4 * intervals.length && spread >= 3;
}

type State = {
  readonly common: Float64Array;
  readonly seasons: Float64Array;
  readonly shapeSizes: Float64Array[];
  readonly responses: Float64Array;
  readonly responseUncertainties: Float64Array;
  readonly rates: Float64Array;
  readonly sigmas: Float64Array;
  readonly weights: Float64Array;
};

function startState(
  strings: readonly PianoString[],
  intervals: readonly ChangeInterval[],
  rows: Rows,
  shapes: readonly Float64Array[],
  bassBridgeTopMidi: number,
  isHumidityKnown: boolean,
): State {
  return {
    common: Float64Array.from(rows.byInterval, (list) => median(list.map((index) => rows.of[index]!.cents))),
    seasons: Float64Array.from(intervals, (interval) => (isHumidityKnown ? (interval.humidityChangePct ?? 0) : 0)),
    shapeSizes: shapes.map(() => new Float64Array(intervals.length)),
    responses: Float64Array.from(strings, ({ midi }) => usualResponse(midi, bassBridgeTopMidi)),
    responseUncertainties: new Float64Array(strings.length).fill(0.5),
    rates: new Float64Array(strings.length),
    sigmas: Float64Array.from(rows.of, (row) => Math.hypot(START_SIGMA_CENTS, Math.sqrt(row.varianceCents2))),
    weights: new Float64Array(rows.of.length).fill(1),
  };
}

type IntervalsFit = {
  readonly state: State;
  readonly rows: Rows;
  readonly intervals: readonly ChangeInterval[];
  readonly shapes: readonly Float64Array[];
  readonly shapeDeviations: readonly number[];
  readonly isHumidityKnown: boolean;
};

function fitIntervals(fit: IntervalsFit): void {
  const { state, rows, intervals, shapes, shapeDeviations, isHumidityKnown } = fit;
  intervals.forEach((interval, k) => {
    const list = rows.byInterval[k]!;
    if (list.length === 0) return;
    const known = isHumidityKnown ? interval.humidityChangePct : null;
    const columns = [() => 1, (i: number) => state.responses[i]!, ...shapes.map((shape) => (i: number) => shape[i]!)];
    const solution = solveRidge({
      rows: list.map((index) => {
        const { stringIndex, cents } = rows.of[index]!;
        return {
          values: columns.map((column) => column(stringIndex)),
          target: cents - state.rates[stringIndex]! * interval.years,
          weight: state.weights[index]! / state.sigmas[index]! ** 2,
        };
      }),
      priors: [
        { mean: 0, deviation: 100 },
        { mean: known ?? 0, deviation: known === null ? 15 : HYGROMETER_PCT },
        ...shapeDeviations.map((deviation) => ({ mean: 0, deviation })),
      ],
    });
    state.common[k] = solution[0]!;
    state.seasons[k] = solution[1]!;
    for (const [j, sizes] of state.shapeSizes.entries()) sizes[k] = solution[2 + j]!;
  });
}

/**
 * Seasons twice as large and responses half as large come to the same: the scale is that which the hygrometers read, regressed on the
 * seasons, since those are far better known than any one hygrometer reading.
 */
function anchorSeasons(state: State, intervals: readonly ChangeInterval[]): void {
  let along = 0;
  let squares = 0;
  intervals.forEach(({ humidityChangePct }, k) => {
    if (humidityChangePct === null) return;
    along += state.seasons[k]! * humidityChangePct;
    squares += state.seasons[k]! ** 2;
  });
  const scale = Math.min(MOST_RESCALING, Math.max(1 / MOST_RESCALING, along / Math.max(squares, 1e-9)));
  for (let k = 0; k < state.seasons.length; k++) state.seasons[k]! *= scale;
  for (let i = 0; i < state.responses.length; i++) {
    state.responses[i]! /= scale;
    state.responseUncertainties[i]! /= scale;
  }
}

/** A scale further off means that the seasons are not humidity's. */
const MOST_RESCALING = 2;

function smoothAt(state: State, shapes: readonly Float64Array[], i: number, k: number): number {
  return shapes.reduce((sum, shape, j) => sum + shape[i]! * state.shapeSizes[j]![k]!, 0);
}

function wholeMovement(state: State, shapes: readonly Float64Array[], k: number): number {
  const means = shapes.map((shape) => shape.reduce((sum, value) => sum + value, 0) / Math.max(1, shape.length));
  return means.reduce((sum, mean, j) => sum + mean * state.shapeSizes[j]![k]!, state.common[k]!);
}

/**
 * What of the common movement and of the shapes goes with the season belongs to the strings' responses, and what of the shapes is
 * steady to their rates: taken out here, so that the strings take it up next. Else a wrong first guess of the responses would stay,
 * made good by the shapes in every interval anew.
 */
function foldIntoStrings(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  isHumidityKnown: boolean,
): void {
  const used = intervals.map((_, k) => k).filter((k) => rows.byInterval[k]!.length > 0);
  if (used.length < 4) return;
  const take = (sizes: Float64Array, takesSteady: boolean) => {
    const [, bySeason = 0, byYears = 0] = solveRidge({
      rows: used.map((k) => ({ values: [1, state.seasons[k]!, intervals[k]!.years], target: sizes[k]!, weight: 1 })),
      priors: [
        { mean: 0, deviation: takesSteady ? 1e-3 : 100 },
        { mean: 0, deviation: 2 },
        { mean: 0, deviation: takesSteady ? 100 : 1e-3 },
      ],
    });
    for (const k of used) sizes[k]! -= bySeason * state.seasons[k]! + byYears * intervals[k]!.years;
  };
  if (isHumidityKnown) take(state.common, false);
  for (const sizes of state.shapeSizes) take(sizes, true);
}

/** Each string's response and rate; the responses lean on their neighbours' smooth course. */
function fitStrings(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
  strings: readonly PianoString[],
  bassBridgeTopMidi: number,
): void {
  const smooth = smoothResponse(strings, state.responses, state.responseUncertainties, bassBridgeTopMidi);
  strings.forEach((_, i) => {
    const list = rows.byString[i]!;
    let aa = 1 / smooth.deviations[i]! ** 2;
    let ab = 0;
    let bb = 1 / 10 ** 2;
    let ga = smooth.means[i]! / smooth.deviations[i]! ** 2;
    let gb = 0;
    let dataOnly = 0;
    for (const index of list) {
      const k = rows.of[index]!.intervalIndex;
      const weight = state.weights[index]! / state.sigmas[index]! ** 2;
      const season = state.seasons[k]!;
      const years = intervals[k]!.years;
      const target = rows.of[index]!.cents - state.common[k]! - smoothAt(state, shapes, i, k);
      aa += weight * season * season;
      ab += weight * season * years;
      bb += weight * years * years;
      ga += weight * season * target;
      gb += weight * years * target;
      dataOnly += weight * season * season;
    }
    const determinant = aa * bb - ab * ab;
    state.responses[i] = (bb * ga - ab * gb) / determinant;
    state.rates[i] = (aa * gb - ab * ga) / determinant;
    state.responseUncertainties[i] = 1 / Math.sqrt(dataOnly + 1e-6);
  });
}

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
function updateNoise(
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

function residualsOf(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
): Float64Array {
  return Float64Array.from(rows.of, ({ stringIndex: i, intervalIndex: k, cents }) => {
    const weather = state.common[k]! + state.seasons[k]! * state.responses[i]! + smoothAt(state, shapes, i, k);
    return cents - weather - state.rates[i]! * intervals[k]!.years;
  });
}

/** The shapes are never held smaller than this, in their order: new wire settles much at first, and by register, and then hardly. */
const LEAST_SHAPE_CENTS = [0.7, 0.6, 0.6, 0.35, 0.25];

function updateShapeDeviations(state: State, shapeDeviations: number[]): void {
  for (const [j, sizes] of state.shapeSizes.entries()) {
    shapeDeviations[j] = Math.max(LEAST_SHAPE_CENTS[j]!, robustDeviation(Array.from(sizes), 0));
  }
}

/**
 * The steady part of smooth_k and of what the season moved beyond the hygrometer goes back to the strings: it may be a failing zone
 * that a slope has swallowed. Whether it is, is judged over the whole compass (slipRates.ts).
 */
function report(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
  shapeDeviations: readonly number[],
  isHumidityKnown: boolean,
  responseCourse: SmoothResponse,
): WeatherFit {
  const yearsSquared = intervals.reduce(
    (sum, interval, k) => sum + (rows.byInterval[k]!.length > 0 ? interval.years ** 2 : 0),
    0,
  );
  const steadyPart = (values: (k: number) => number) =>
    intervals.reduce((sum, interval, k) => sum + interval.years * values(k), 0) / Math.max(yearsSquared, 1e-9);
  const shapeRates = state.shapeSizes.map((sizes) => steadyPart((k) => sizes[k]!));
  const seasonRate = isHumidityKnown
    ? steadyPart((k) =>
        intervals[k]!.humidityChangePct === null ? 0 : state.seasons[k]! - intervals[k]!.humidityChangePct!,
      )
    : 0;
  const residuals = residualsOf(state, rows, intervals, shapes);
  const ownCents = Float64Array.from(rows.of, ({ stringIndex: i, intervalIndex: k }, index) => {
    const returned =
      shapes.reduce((sum, shape, j) => sum + shape[i]! * shapeRates[j]!, 0) + seasonRate * state.responses[i]!;
    const strayed = (state.responses[i]! - responseCourse.means[i]!) * state.seasons[k]!;
    return residuals[index]! + (state.rates[i]! + returned) * intervals[k]!.years + strayed;
  });
  return {
    responses: state.responses,
    responseUncertainties: state.responseUncertainties,
    responseCourse,
    isHumidityKnown,
    commonCents: Float64Array.from(intervals, (_, k) => wholeMovement(state, shapes, k)),
    seasons: state.seasons,
    ownCents,
    sigmas: state.sigmas,
    residuals,
    shapeDeviations,
  };
}
