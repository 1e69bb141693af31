/**
 * Failing zones: neighbouring notes, in the order of their pins, that go flat together.
 *
 * Every stretch of notes is tried, over the whole history and over its later parts, since a block may begin to fail. A stretch's rate is
 * held against its own scatter from interval to interval, so that a part of the compass which weather moves about is not taken
 * for a failing one; how large the largest of all stretches gets by chance is found by simulation (the scan statistic: J. Naus, J. Am.
 * Stat. Assoc. 60 (1965) 532–538). At least two thirds of its notes have to take part.
 */
import type { ChangeInterval, ChangeRow, PianoString } from './changeTable.ts';
import { invert } from './ridge.ts';
import { median } from './statistics.ts';

export type Zone = {
  readonly fromMidi: number;
  readonly toMidi: number;
  readonly centsPerYear: number;
  readonly standardUncertainty: number;
  readonly probability: number;
  readonly isAccelerating: boolean;
  /** First interval that the rate belongs to. */
  readonly fromInterval: number;
};

export type ZoneRequest = {
  readonly strings: readonly PianoString[];
  readonly intervals: readonly ChangeInterval[];
  readonly changes: readonly ChangeRow[];
  /** Change of each row with season and common movement taken out, cents. */
  readonly ownCents: Float64Array;
  /** What is left of each change when the string's own rate is taken out, too. */
  readonly residuals: Float64Array;
  readonly sigmas: Float64Array;
  readonly random: () => number;
  readonly shapes: readonly Float64Array[];
  /** Standard deviation of each shape's steady part, cents a year. */
  readonly shapeDeviations: readonly number[];
};

const SHORTEST = 5;
const LONGEST = 22;
/** A zone slower than this is not told from how a piano's parts move anyway. */
const LEAST_RATE = 0.6;
/** A stretch that the course can imitate to all but this share cannot be told from it. */
const LEAST_OWN = 0.25;
const LEAST_TAKING_PART = 0.66;
/** The rate has to exceed its scatter over the intervals this many times: what comes and goes is weather. */
const LEAST_STEADINESS = 3.2;
const SIMULATIONS = 400;
/** The largest stretch by chance is exceeded in this share of steady instruments. */
const CHANCE = 0.005;

type NoteGrid = { readonly midis: number[]; readonly means: Float64Array[]; readonly variances: Float64Array[] };

export function findZones(request: ZoneRequest): Zone[] {
  const grid = gridOf(request);
  if (grid.midis.length < SHORTEST || request.intervals.length < 3) return [];
  const courses = beginnings(request.intervals.length).map((from) => courseOf(grid, request, from));
  const limit = chanceLimit(grid, courses, request);
  const zones: Zone[] = [];
  const taken = new Set<number>();
  for (let round = 0; round < 3; round++) {
    const best = strongestStretch(grid, courses, request.intervals, taken);
    if (!best || best.score < limit) break;
    const zone = zoneOf(best, grid, request, limit);
    if (-zone.centsPerYear < LEAST_STEADINESS * zone.standardUncertainty) break;
    zones.push(zone);
    for (let i = best.first; i <= best.last; i++) taken.add(i);
  }
  return zones;
}

/** Own changes by note and interval; a note's strings together. Plain means, so their noise is what the tails bring, too. */
function gridOf({ strings, intervals, changes, ownCents, residuals, sigmas }: ZoneRequest): NoteGrid {
  const tails = rootMeanSquare(residuals.map((value, index) => Math.min(6, Math.abs(value) / sigmas[index]!)));
  const midis = [...new Set(strings.map((string) => string.midi))].sort((a, b) => a - b);
  const place = new Map(midis.map((midi, index) => [midi, index]));
  const weights = midis.map(() => new Float64Array(intervals.length));
  const sums = midis.map(() => new Float64Array(intervals.length));
  changes.forEach((row, index) => {
    const note = place.get(strings[row.stringIndex]!.midi)!;
    const weight = 1 / (tails * sigmas[index]!) ** 2;
    // A single wild change must not make a stretch of notes slip.
    const limited = Math.max(-6 * sigmas[index]!, Math.min(6 * sigmas[index]!, ownCents[index]!));
    weights[note]![row.intervalIndex]! += weight;
    sums[note]![row.intervalIndex]! += weight * limited;
  });
  return {
    midis,
    means: sums.map((sum, n) => sum.map((value, k) => (weights[n]![k]! > 0 ? value / weights[n]![k]! : Number.NaN))),
    variances: weights.map((weight) => weight.map((value) => (value > 0 ? 1 / value : Infinity))),
  };
}

function rootMeanSquare(values: Float64Array): number {
  const squares = values.reduce((sum, value) => sum + value * value, 0);
  return Math.max(1, Math.sqrt(squares / Math.max(1, values.length)));
}

type Stretch = {
  readonly first: number;
  readonly last: number;
  readonly fromInterval: number;
  readonly rate: number;
  readonly uncertainty: number;
  readonly score: number;
};

/** Later parts of the history that are tried by themselves: at least four intervals each. */
function beginnings(intervalCount: number): number[] {
  const all = [0, ...[0.3, 0.5, 0.65].map((share) => Math.round(share * intervalCount))];
  return [...new Set(all)].filter((from) => from === 0 || intervalCount - from >= 4);
}

function strongestStretch(
  grid: NoteGrid,
  courses: readonly Course[],
  intervals: readonly ChangeInterval[],
  taken: ReadonlySet<number>,
): Stretch | undefined {
  let best: Stretch | undefined;
  for (const course of courses) {
    const { rates } = noteRates(grid, intervals, course.fromInterval);
    const residuals = residualsOf(course, rates);
    const sums = runningProducts(course, residuals);
    for (const window of course.windows) {
      const { first, last, own } = window;
      if (taken.has(first) || taken.has(last)) continue;
      const rate = (sums[last + 1]! - sums[first]!) / own;
      const score = -rate * Math.sqrt(own);
      if (!(rate < -LEAST_RATE) || (best && score <= best.score)) continue;
      if (!isBorneByMost(course, residuals, window, rate)) continue;
      best = { first, last, fromInterval: course.fromInterval, rate, uncertainty: 1 / Math.sqrt(own), score };
    }
  }
  return best;
}

function noteRates(grid: NoteGrid, intervals: readonly ChangeInterval[], fromInterval: number) {
  const rates = new Float64Array(grid.midis.length);
  const weights = new Float64Array(grid.midis.length);
  grid.means.forEach((means, n) => {
    let top = 0;
    let information = 0;
    for (let k = fromInterval; k < intervals.length; k++) {
      const variance = grid.variances[n]![k]!;
      if (!Number.isFinite(variance)) continue;
      const { years } = intervals[k]!;
      top += (years * means[k]!) / variance;
      information += (years * years) / variance;
    }
    rates[n] = information > 0 ? top / information : 0;
    weights[n] = information;
  });
  return { rates, weights };
}

/**
 * The common course of the rates, made ready for asking of any stretch: how much flatter is it, when the course is fitted with it?
 * So a course that bends towards a failing zone does not hide it.
 */
type Course = {
  readonly fromInterval: number;
  readonly weights: Float64Array;
  /** For each note: one, and the shapes. */
  readonly design: readonly (readonly number[])[];
  /** Inverse of XᵀWX + Λ. */
  readonly inverse: readonly (readonly number[])[];
  readonly windows: readonly Window[];
};

function courseOf(grid: NoteGrid, request: ZoneRequest, fromInterval: number): Course {
  const { weights } = noteRates(grid, request.intervals, fromInterval);
  const stringAt = grid.midis.map((midi) => request.strings.findIndex((string) => string.midi === midi));
  const design = stringAt.map((i) => [1, ...request.shapes.map((shape) => shape[i]!)]);
  const precisions = [30, ...request.shapeDeviations].map((deviation) => 1 / deviation ** 2);
  const normal = precisions.map((precision, i) =>
    precisions.map((_, j) => {
      const sum = design.reduce((total, row, n) => total + weights[n]! * row[i]! * row[j]!, 0);
      return i === j ? sum + precision : sum;
    }),
  );
  const inverse = invert(normal);
  return { fromInterval, weights, design, inverse, windows: windowsOf(design, weights, inverse) };
}

/** Rates less their course. */
function residualsOf({ design, weights, inverse }: Course, rates: Float64Array): Float64Array {
  const right = inverse.map((_, i) => design.reduce((sum, row, n) => sum + weights[n]! * row[i]! * rates[n]!, 0));
  const solution = inverse.map((row) => row.reduce((sum, value, j) => sum + value * right[j]!, 0));
  return rates.map((rate, n) => rate - design[n]!.reduce((sum, value, j) => sum + value * solution[j]!, 0));
}

/** What asking about one stretch comes to, whatever the rates are. */
type Window = {
  readonly first: number;
  readonly last: number;
  /** Information on the stretch's rate that the course cannot imitate: one over its variance. */
  readonly own: number;
  /** (XᵀWX + Λ)⁻¹·XᵀW·v, v one inside the stretch and nought outside: what the course would give way by. */
  readonly givesWay: readonly number[];
};

function windowsOf(design: Course['design'], weights: Float64Array, inverse: Course['inverse']): Window[] {
  const windows: Window[] = [];
  for (let first = 0; first < design.length; first++) {
    const overlap = inverse.map(() => 0);
    let inside = 0;
    for (let last = first; last < Math.min(design.length, first + LONGEST); last++) {
      const weight = weights[last]!;
      inside += weight;
      for (let j = 0; j < overlap.length; j++) overlap[j]! += weight * design[last]![j]!;
      if (last - first + 1 < SHORTEST) continue;
      const givesWay = inverse.map((row) => row.reduce((sum, value, j) => sum + value * overlap[j]!, 0));
      const own = inside - givesWay.reduce((sum, value, j) => sum + value * overlap[j]!, 0);
      if (own > LEAST_OWN * inside) windows.push({ first, last, own, givesWay });
    }
  }
  return windows;
}

/** Running sums of weight times residual: entry n is the sum over the notes before n. */
function runningProducts({ weights }: Course, residuals: Float64Array): Float64Array {
  const sums = new Float64Array(residuals.length + 1);
  for (let n = 0; n < residuals.length; n++) sums[n + 1] = sums[n]! + weights[n]! * residuals[n]!;
  return sums;
}

/** Whether the stretch is flat for most of its notes, and not for a few of them. */
function isBorneByMost({ design, weights }: Course, residuals: Float64Array, window: Window, rate: number): boolean {
  const own: number[] = [];
  for (let n = window.first; n <= window.last; n++) {
    if (!(weights[n]! > 0)) continue;
    // The note against the course as it is without the zone.
    own.push(residuals[n]! + rate * design[n]!.reduce((sum, value, j) => sum + value * window.givesWay[j]!, 0));
  }
  const takingPart = own.filter((noteRate) => noteRate < 0.4 * rate).length;
  return own.length >= SHORTEST && takingPart >= LEAST_TAKING_PART * own.length && median(own) < 0.6 * rate;
}

/** Means of the stretch by interval, for its scatter over the intervals and for whether it grows. */
function intervalMeans(grid: NoteGrid, intervals: readonly ChangeInterval[], stretch: Stretch, fromInterval: number) {
  return intervals.flatMap(({ years }, k) => {
    if (k < fromInterval) return [];
    let top = 0;
    let weight = 0;
    for (let n = stretch.first; n <= stretch.last; n++) {
      const variance = grid.variances[n]![k]!;
      if (!Number.isFinite(variance)) continue;
      top += grid.means[n]![k]! / variance;
      weight += 1 / variance;
    }
    return weight > 0 ? [{ intervalIndex: k, years, cents: top / weight, variance: 1 / weight }] : [];
  });
}

/** Uncertainty of the rate from how it varies between intervals: weather that moves the whole stretch shows there. */
function clusteredUncertainty(rows: readonly { years: number; cents: number }[]): number {
  const yearsSquared = rows.reduce((sum, row) => sum + row.years ** 2, 0);
  const rate = rows.reduce((sum, row) => sum + row.years * row.cents, 0) / yearsSquared;
  const scatter = rows.reduce((sum, row) => sum + (row.years * (row.cents - rate * row.years)) ** 2, 0);
  const freedom = Math.max(1, rows.length - 1);
  return (Math.sqrt(scatter) / yearsSquared) * Math.sqrt(rows.length / freedom);
}

function zoneOf(stretch: Stretch, grid: NoteGrid, request: ZoneRequest, limit: number): Zone {
  const rows = intervalMeans(grid, request.intervals, stretch, stretch.fromInterval);
  const uncertainty = Math.hypot(stretch.uncertainty, clusteredUncertainty(rows));
  const excess = stretch.score - limit;
  return {
    fromMidi: grid.midis[stretch.first]!,
    toMidi: grid.midis[stretch.last]!,
    centsPerYear: stretch.rate,
    standardUncertainty: uncertainty,
    probability: Math.min(0.999, 1 - 0.04 * Math.exp(-excess)),
    isAccelerating: growsWithTime(intervalMeans(grid, request.intervals, stretch, 0), request.intervals),
    fromInterval: stretch.fromInterval,
  };
}

/** Whether the rate's magnitude grows: weighted slope of rate against time, two standard deviations below nought. */
function growsWithTime(
  rows: readonly { intervalIndex: number; years: number; cents: number; variance: number }[],
  intervals: readonly ChangeInterval[],
): boolean {
  if (rows.length < 4) return false;
  let elapsed = 0;
  const ends = intervals.map((interval) => (elapsed += interval.years));
  const points = rows.map(({ intervalIndex, years, cents, variance }) => ({
    time: ends[intervalIndex]! - 0.5 * years,
    rate: cents / years,
    weight: years ** 2 / (variance + 0.3 ** 2),
  }));
  const total = points.reduce((sum, point) => sum + point.weight, 0);
  const middle = points.reduce((sum, point) => sum + point.weight * point.time, 0) / total;
  const spread = points.reduce((sum, point) => sum + point.weight * (point.time - middle) ** 2, 0);
  const slope = points.reduce((sum, point) => sum + point.weight * (point.time - middle) * point.rate, 0) / spread;
  return slope < -2 / Math.sqrt(spread);
}

/** The score that the strongest stretch of a steady instrument stays under, from simulated instruments of the same grid. */
function chanceLimit(grid: NoteGrid, courses: readonly Course[], { intervals, random }: ZoneRequest): number {
  const largest: number[] = [];
  for (let trial = 0; trial < SIMULATIONS; trial++) {
    const means = grid.variances.map((variances) =>
      variances.map((variance) => (Number.isFinite(variance) ? Math.sqrt(variance) * random() : Number.NaN)),
    );
    largest.push(largestScore({ ...grid, means }, courses, intervals));
  }
  largest.sort((a, b) => a - b);
  return largest[Math.min(largest.length - 1, Math.floor((1 - CHANCE) * largest.length))]!;
}

/** Largest score of any stretch, the other demands left aside: the limit is on the safe side. */
function largestScore(grid: NoteGrid, courses: readonly Course[], intervals: readonly ChangeInterval[]): number {
  let largest = 0;
  for (const course of courses) {
    const residuals = residualsOf(course, noteRates(grid, intervals, course.fromInterval).rates);
    const sums = runningProducts(course, residuals);
    for (const { first, last, own } of course.windows) {
      largest = Math.max(largest, -(sums[last + 1]! - sums[first]!) / Math.sqrt(own));
    }
  }
  return largest;
}
