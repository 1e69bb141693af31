/** What the turns of the weather's fit work on: the rows, and what is thought of them so far. */
import type { ChangeInterval, ChangeRow, PianoString } from './changeRows.ts';
import { usualResponse } from './humidityResponse.ts';
import { median } from './statistics.ts';

export type Rows = {
  readonly of: readonly ChangeRow[];
  readonly byString: number[][];
  readonly byInterval: number[][];
};

const START_SIGMA_CENTS = 1;

export function indexRows(of: readonly ChangeRow[], stringCount: number, intervalCount: number): Rows {
  const byString: number[][] = Array.from({ length: stringCount }, () => []);
  const byInterval: number[][] = Array.from({ length: intervalCount }, () => []);
  of.forEach((row, index) => {
    byString[row.stringIndex]!.push(index);
    byInterval[row.intervalIndex]!.push(index);
  });
  return { of, byString, byInterval };
}

export type State = {
  readonly common: Float64Array;
  readonly seasons: Float64Array;
  readonly shapeSizes: Float64Array[];
  readonly responses: Float64Array;
  readonly responseUncertainties: Float64Array;
  readonly rates: Float64Array;
  readonly sigmas: Float64Array;
  readonly weights: Float64Array;
};

export function startState(
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

export function smoothAt(state: State, shapes: readonly Float64Array[], i: number, k: number): number {
  return shapes.reduce((sum, shape, j) => sum + shape[i]! * state.shapeSizes[j]![k]!, 0);
}

export function residualsOf(
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
