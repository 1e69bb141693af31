/** The common course of the notes' rates, made ready for asking of any stretch how much flatter it is than the rest. */
import type { PianoString } from './changeRows.ts';
import { invert } from './ridge.ts';
import type { NoteGrid } from './zoneGrid.ts';
import type { ZonePattern } from './zonePatterns.ts';

/**
 * change(n, k) = course(n)·years_k + zone(n)·pattern_k + noise. The course is fitted with each stretch, so that one that bends towards
 * a failing zone does not hide it; and over the whole history, so that what began later is told from what was always so.
 */
export type Course = {
  readonly pattern: ZonePattern;
  /** By note and interval: what a change is multiplied with, so that the sum is its part along the pattern over the variance. */
  readonly regressors: readonly Float64Array[];
  /** By note: sums over the intervals of one over the variance, times years², years·pattern and pattern². */
  readonly steady: Float64Array;
  readonly cross: Float64Array;
  readonly inside: Float64Array;
  /** For each note: one, and the shapes. */
  readonly design: readonly (readonly number[])[];
  /** Inverse of the course's normal matrix with its priors. */
  readonly inverse: readonly (readonly number[])[];
  readonly windows: readonly Window[];
};

/** What asking about one stretch comes to, whatever the changes are. */
export type Window = {
  readonly first: number;
  readonly last: number;
  /** Information on the stretch's rate that the course cannot imitate: one over its variance. */
  readonly own: number;
  /** What the course's coefficients give way by for each cent a year of the stretch. */
  readonly givesWay: readonly number[];
};

export const SHORTEST = 7;
export const LONGEST = 22;
/** A stretch that the course can imitate to all but this share cannot be told from it. */
const LEAST_OWN = 0.25;

export type CourseRequest = {
  readonly grid: NoteGrid;
  readonly strings: readonly PianoString[];
  readonly shapes: readonly Float64Array[];
  /** Standard deviation of each shape's steady part, cents a year. */
  readonly shapeDeviations: readonly number[];
  readonly seasons: Float64Array;
  /** Notes of zones already found: they have no say, and no further zone overlaps them. */
  readonly taken: ReadonlySet<number>;
};

/** @param steadyPattern the pattern of years themselves */
export function courseOf(request: CourseRequest, pattern: ZonePattern, steadyPattern: ZonePattern): Course {
  const { grid, strings, shapes, shapeDeviations, taken, seasons } = request;
  const sums = (regressors: readonly Float64Array[], { course }: ZonePattern) =>
    Float64Array.from(regressors, (regressor, n) =>
      taken.has(n) ? 0 : regressor.reduce((sum, value, k) => sum + value * course[k]!, 0),
    );
  const steadyRegressors = seasonlessRegressors(grid, steadyPattern, seasons);
  const regressors = seasonlessRegressors(grid, pattern, seasons);
  const steady = sums(steadyRegressors, steadyPattern);
  const cross = sums(regressors, steadyPattern);
  const inside = sums(regressors, pattern);
  const design = grid.midis.map((midi) => {
    const own = strings.map((_, i) => i).filter((i) => strings[i]!.midi === midi);
    return [1, ...shapes.map((shape) => own.reduce((sum, i) => sum + shape[i]!, 0) / own.length)];
  });
  const precisions = [30, ...shapeDeviations].map((deviation) => 1 / deviation ** 2);
  const inverse = invert(
    precisions.map((precision, i) =>
      precisions.map((_, j) => {
        const sum = design.reduce((total, row, n) => total + steady[n]! * row[i]! * row[j]!, 0);
        return i === j ? sum + precision : sum;
      }),
    ),
  );
  const windows = windowsOf({ design, cross, inside, inverse, taken });
  return { pattern, regressors, steady, cross, inside, design, inverse, windows };
}

type WindowRequest = Pick<Course, 'design' | 'cross' | 'inside' | 'inverse'> & { readonly taken: ReadonlySet<number> };

function windowsOf({ design, cross, inside, inverse, taken }: WindowRequest): Window[] {
  const windows: Window[] = [];
  for (let first = 0; first < design.length; first++) {
    const overlap = inverse.map(() => 0);
    let information = 0;
    for (let last = first; last < Math.min(design.length, first + LONGEST) && !taken.has(last); last++) {
      information += inside[last]!;
      for (let j = 0; j < overlap.length; j++) overlap[j]! += cross[last]! * design[last]![j]!;
      if (last - first + 1 < SHORTEST) continue;
      const givesWay = inverse.map((row) => row.reduce((sum, value, j) => sum + value * overlap[j]!, 0));
      const own = information - givesWay.reduce((sum, value, j) => sum + value * overlap[j]!, 0);
      if (own > LEAST_OWN * information) windows.push({ first, last, own, givesWay });
    }
  }
  return windows;
}

/** How far a note's response to the season may lie off its neighbours' course, cents per %RH: what goes with it proves nothing. */
const RESPONSE_DEVIATION = 0.3;

/** Pattern over variance with what goes with the season taken out, note by note, since not all notes have all intervals. */
function seasonlessRegressors(grid: NoteGrid, { course }: ZonePattern, seasons: Float64Array): Float64Array[] {
  return grid.variances.map((variances) => {
    let along = 0;
    let squares = 1 / RESPONSE_DEVIATION ** 2;
    variances.forEach((variance, k) => {
      along += (course[k]! * seasons[k]!) / variance;
      squares += seasons[k]! ** 2 / variance;
    });
    return variances.map((variance, k) => (course[k]! - (along / squares) * seasons[k]!) / variance);
  });
}

/** By note: the sum over the intervals of pattern·change over the variance. */
export function alongPattern(means: readonly Float64Array[], { regressors }: Pick<Course, 'regressors'>): Float64Array {
  return Float64Array.from(means, (row, n) => {
    const own = regressors[n]!;
    let sum = 0;
    for (let k = 0; k < own.length; k++) if (own[k] !== 0) sum += own[k]! * row[k]!;
    return sum;
  });
}

/** Coefficients of the course where there is no zone, from the notes' sums along the steady pattern. */
export function courseCoefficients({ design, inverse, steady }: Course, alongSteady: Float64Array): number[] {
  const right = inverse.map((_, i) =>
    design.reduce((sum, row, n) => (steady[n]! > 0 ? sum + alongSteady[n]! * row[i]! : sum), 0),
  );
  return inverse.map((row) => row.reduce((sum, value, j) => sum + value * right[j]!, 0));
}

/** What is left of the notes' sums along the pattern, course taken out. */
export function lessCourseOf(course: Course, along: Float64Array, coefficients: readonly number[]): Float64Array {
  return along.map((value, n) => value - course.cross[n]! * courseAt(course, n, coefficients));
}

export function courseAt({ design }: Pick<Course, 'design'>, n: number, coefficients: readonly number[]): number {
  return design[n]!.reduce((sum, value, j) => sum + value * coefficients[j]!, 0);
}

/** Running sums: entry n is the sum over the notes before n. */
export function runningSums(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let n = 0; n < values.length; n++) sums[n + 1] = sums[n]! + values[n]!;
  return sums;
}
