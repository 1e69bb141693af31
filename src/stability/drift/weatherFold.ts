/** Directions in which the weather's fit may be moved without changing a residual, gone along at once rather than over many turns. */
import type { ChangeInterval } from './changeRows.ts';
import { solveRidge } from './ridge.ts';
import type { Rows, State } from './weatherState.ts';

/**
 * Seasons twice as large and responses half as large come to the same: the scale is that which the hygrometers read, regressed on the
 * seasons, since those are far better known than any one hygrometer reading.
 */
export function anchorSeasons(state: State, intervals: readonly ChangeInterval[]): void {
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

/**
 * What of the common movement and of the shapes goes with the season belongs to the strings' responses, and what of the shapes is
 * steady to their rates: handed over here at once, which changes no residual. Left to the turns it would take very many, for the responses
 * lean on their own course.
 */
export function foldIntoStrings(
  state: State,
  rows: Rows,
  intervals: readonly ChangeInterval[],
  shapes: readonly Float64Array[],
  isHumidityKnown: boolean,
): void {
  const used = intervals.map((_, k) => k).filter((k) => rows.byInterval[k]!.length > 0);
  if (used.length < 4) return;
  const handOver = (sizes: Float64Array, shapeAt: (string: number) => number, handsSteady: boolean) => {
    const [, bySeason = 0, byYears = 0] = solveRidge({
      rows: used.map((k) => ({ values: [1, state.seasons[k]!, intervals[k]!.years], target: sizes[k]!, weight: 1 })),
      priors: [
        { mean: 0, deviation: handsSteady ? 1e-3 : 100 },
        { mean: 0, deviation: 2 },
        { mean: 0, deviation: handsSteady ? 100 : 1e-3 },
      ],
    });
    for (const k of used) sizes[k]! -= bySeason * state.seasons[k]! + byYears * intervals[k]!.years;
    for (let i = 0; i < state.responses.length; i++) {
      state.responses[i]! += bySeason * shapeAt(i);
      state.rates[i]! += byYears * shapeAt(i);
    }
  };
  if (isHumidityKnown) handOver(state.common, () => 1, false);
  for (const [j, sizes] of state.shapeSizes.entries()) handOver(sizes, (i) => shapes[j]![i]!, true);
}
