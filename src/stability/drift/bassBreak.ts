/**
 * Where the bass bridge ends, when nobody said. Strings on the two bridges answer the season differently, so that the course of every
 * change along the compass breaks between the last note of one and the first of the other: the break that lets smooth courses fit best.
 */
import type { ChangeTable } from './changeRows.ts';
import { USUAL_BASS_BRIDGE_TOP_MIDI } from './history.ts';
import { solveRidge } from './ridge.ts';
import { shapesOf } from './shapes.ts';
import { median } from './statistics.ts';

/** Bass bridges end between about D2 and B2 (common practice); a little more is tried. */
const LOWEST_TOP = 34;
const HIGHEST_TOP = 50;
/** The intervals in which the piano moved most tell most. */
const MOST_INTERVALS = 12;
/** How much better than at the usual place the fit has to be, as a sum of log(1 + residual²). */
const CLEAR = 4;

export function findBassBreak(table: ChangeTable): number {
  const { strings } = table;
  if (strings.length < 30) return USUAL_BASS_BRIDGE_TOP_MIDI;
  const moved = movedMost(table);
  if (moved.length === 0) return USUAL_BASS_BRIDGE_TOP_MIDI;
  let best = { top: USUAL_BASS_BRIDGE_TOP_MIDI, loss: misfit(table, moved, USUAL_BASS_BRIDGE_TOP_MIDI) - CLEAR };
  for (let top = LOWEST_TOP; top <= HIGHEST_TOP; top++) {
    const loss = misfit(table, moved, top);
    if (loss < best.loss) best = { top, loss };
  }
  return best.top;
}

type Moved = readonly { readonly stringIndex: number; readonly cents: number }[];

/** The changes of the intervals with the widest spread, half of the compass read at least. */
function movedMost({ strings, intervals, changes }: ChangeTable): Moved[] {
  const byInterval: { stringIndex: number; cents: number }[][] = intervals.map(() => []);
  for (const { stringIndex, intervalIndex, cents } of changes) byInterval[intervalIndex]!.push({ stringIndex, cents });
  const spread = (rows: Moved) => {
    const middle = median(rows.map((row) => row.cents));
    return median(rows.map((row) => Math.abs(row.cents - middle)));
  };
  return byInterval
    .filter((rows) => rows.length >= 0.5 * strings.length)
    .sort((a, b) => spread(b) - spread(a))
    .slice(0, MOST_INTERVALS);
}

/** Robust misfit of smooth courses that break above `top`. */
function misfit({ strings }: ChangeTable, moved: readonly Moved[], top: number): number {
  const shapes = shapesOf(strings, top);
  const priors = [{ mean: 0, deviation: 100 }, ...shapes.map(() => ({ mean: 0, deviation: 20 }))];
  let loss = 0;
  for (const rows of moved) {
    const values = rows.map(({ stringIndex }) => [1, ...shapes.map((shape) => shape[stringIndex]!)]);
    let weights = rows.map(() => 1);
    let residuals: number[] = [];
    for (let turn = 0; turn < 3; turn++) {
      const solution = solveRidge({
        rows: rows.map((row, i) => ({ values: values[i]!, target: row.cents, weight: weights[i]! })),
        priors,
      });
      residuals = rows.map((row, i) => row.cents - values[i]!.reduce((sum, value, j) => sum + value * solution[j]!, 0));
      weights = residuals.map((residual) => 1 / (1 + residual ** 2));
    }
    loss += residuals.reduce((sum, residual) => sum + Math.log1p(residual ** 2), 0);
  }
  return loss;
}
