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
import { type SmoothResponse, smoothResponse } from './humidityResponse.ts';
import { solveRidge } from './ridge.ts';
import { shapesOf } from './shapes.ts';
import { robustDeviation } from './statistics.ts';
import { anchorSeasons, foldIntoStrings } from './weatherFold.ts';
import { updateNoise } from './weatherNoise.ts';
import { indexRows, type Rows, residualsOf, type State, smoothAt, startState } from './weatherState.ts';

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
/**
 * In the first turns the responses lean this many times less on their neighbours' course, and no noise is learnt: else a register whose
 * first guess is wrong looks noisy, is no longer listened to, and stays wrong.
 */
const START_LOOSENESS = [20, 10, 5, 2];

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
    foldIntoStrings(state, rows, intervals, shapes, isHumidityKnown);
    if (isHumidityKnown) anchorSeasons(state, intervals);
    fitStrings(state, rows, intervals, shapes, strings, bassBridgeTopMidi, START_LOOSENESS[turn] ?? 1);
    if (turn >= START_LOOSENESS.length) updateNoise(state, rows, intervals, shapes, strings);
    if (turn >= 3) updateShapeDeviations(state, shapeDeviations);
  }
  const course = smoothResponse(strings, state.responses, state.responseUncertainties, bassBridgeTopMidi);
  return report(state, rows, intervals, shapes, shapeDeviations, isHumidityKnown, course);
}

/** Three intervals with humidity at both ends, and some spread, let its effect be learnt. */
function knowsHumidity(intervals: readonly ChangeInterval[], rows: Rows): boolean {
  const known = intervals.filter(
    (interval, k) => interval.humidityChangePct !== null && rows.byInterval[k]!.length > 0,
  );
  const spread = known.reduce((most, interval) => Math.max(most, Math.abs(interval.humidityChangePct ?? 0)), 0);
  return known.length >= 3 && known.length >= 0.4 * intervals.length && spread >= 3;
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

function wholeMovement(state: State, shapes: readonly Float64Array[], k: number): number {
  const means = shapes.map((shape) => shape.reduce((sum, value) => sum + value, 0) / Math.max(1, shape.length));
  return means.reduce((sum, mean, j) => sum + mean * state.shapeSizes[j]![k]!, state.common[k]!);
}

/** Each string's response and rate; the responses lean on their neighbours' smooth course. */
function fitStrings(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
  strings: readonly PianoString[],
  bassBridgeTopMidi: number,
  looseness: number,
): void {
  const smooth = smoothResponse(strings, state.responses, state.responseUncertainties, bassBridgeTopMidi);
  strings.forEach((_, i) => {
    const list = rows.byString[i]!;
    const deviation = looseness * smooth.deviations[i]!;
    let aa = 1 / deviation ** 2;
    let ab = 0;
    let bb = 1 / 10 ** 2;
    let ga = smooth.means[i]! / deviation ** 2;
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
