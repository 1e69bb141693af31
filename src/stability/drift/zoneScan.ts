/**
 * Failing zones: neighbouring notes, in the order of their pins, that go flat together.
 *
 * Every stretch of notes is tried, with every pattern over the years (zonePatterns.ts), since a block may begin to fail. How large the
 * largest of all stretches gets by chance is found by simulation (the scan statistic: J. Naus, J. Am. Stat. Assoc. 60 (1965) 532–538), and
 * that neighbouring notes move together without failing is learnt from the residuals (patchFactors). A stretch's rate has to stand
 * out from its own scatter over the intervals, too, and at least two thirds of its notes have to take part.
 */
import type { ChangeInterval, PianoString } from './changeRows.ts';
import type { OwnHistory } from './ownChanges.ts';
import { median } from './statistics.ts';
import {
  alongPattern,
  type Course,
  type CourseRequest,
  courseAt,
  courseCoefficients,
  courseOf,
  LONGEST,
  lessCourseOf,
  runningSums,
  SHORTEST,
  type Window,
} from './zoneCourse.ts';
import { type NoteGrid, noteGrid, patchFactors } from './zoneGrid.ts';
import { type ZonePattern, zonePatterns } from './zonePatterns.ts';
import { growsWithTime, isSteady, stretchChanges, stretchRate } from './zoneTrend.ts';

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
  readonly histories: readonly OwnHistory[];
  readonly seasons: Float64Array;
  readonly random: () => number;
  readonly shapes: readonly Float64Array[];
  /** Standard deviation of each shape's steady part, cents a year. */
  readonly shapeDeviations: readonly number[];
};

/** A zone slower than this is not told from how a piano's parts move anyway. */
const LEAST_RATE = 0.8;
const LEAST_TAKING_PART = 0.66;
const SIMULATIONS = 400;
/** The largest stretch by chance is exceeded in this share of steady instruments. */
const CHANCE = 0.005;
const MOST_ZONES = 3;
/** Stretches that come and go are passed over, and the next looked at. */
const MOST_TRIES = 5;

export function findZones(request: ZoneRequest): Zone[] {
  const { strings, intervals, histories, seasons } = request;
  const grid = noteGrid(strings, histories, intervals.length);
  if (grid.midis.length < SHORTEST || intervals.filter(({ hasBaseline }) => hasBaseline).length < 3) return [];
  const patterns = zonePatterns(intervals);
  const patches = patchFactors(grid, intervals.length, LONGEST);
  const zones: Zone[] = [];
  const taken = new Set<number>();
  let limit = 0;
  for (let turn = 0; turn < MOST_TRIES && zones.length < MOST_ZONES; turn++) {
    const courses = patterns.map((pattern) => courseOf(courseRequest(grid, request, taken), pattern, patterns[0]!));
    if (turn === 0) limit = chanceLimit(grid, courses, request.random);
    const stretch = strongestStretch(grid, courses, patches, limit);
    if (!stretch) break;
    const zone = zoneOf(stretch, grid, intervals, seasons, limit);
    if (zone) zones.push(zone);
    for (let n = stretch.first; n <= stretch.last; n++) taken.add(n);
  }
  return zones;
}

function courseRequest(grid: NoteGrid, request: ZoneRequest, taken: ReadonlySet<number>): CourseRequest {
  const { strings, shapes, shapeDeviations, seasons } = request;
  return { grid, strings, shapes, shapeDeviations, seasons, taken };
}

type Stretch = {
  readonly first: number;
  readonly last: number;
  readonly pattern: ZonePattern;
  readonly rate: number;
  readonly uncertainty: number;
  readonly score: number;
};

function strongestStretch(
  grid: NoteGrid,
  courses: readonly Course[],
  patches: readonly number[],
  limit: number,
): Stretch | undefined {
  let best: Stretch | undefined;
  const steady = alongPattern(grid.means, courses[0]!);
  for (const course of courses) {
    const coefficients = courseCoefficients(course, steady);
    const along = alongPattern(grid.means, course);
    const sums = runningSums(lessCourseOf(course, along, coefficients));
    for (const window of course.windows) {
      const { first, last } = window;
      const own = window.own / patches[last - first + 1]!;
      const rate = (sums[last + 1]! - sums[first]!) / window.own;
      const score = -rate * Math.sqrt(own);
      if (!(rate < -LEAST_RATE) || score < limit || (best && score <= best.score)) continue;
      const given = coefficients.map((value, j) => value - rate * window.givesWay[j]!);
      if (!isBorneByMost(course, along, window, rate, given)) continue;
      best = { first, last, pattern: course.pattern, rate, uncertainty: 1 / Math.sqrt(own), score };
    }
  }
  return best;
}

/** Whether the stretch is flat for most of its notes, and not for a few of them. @param given the course's coefficients beside the zone */
function isBorneByMost(
  course: Course,
  along: Float64Array,
  { first, last }: Window,
  rate: number,
  given: readonly number[],
): boolean {
  const own: number[] = [];
  for (let n = first; n <= last; n++) {
    if (course.inside[n]! > 0)
      own.push((along[n]! - course.cross[n]! * courseAt(course, n, given)) / course.inside[n]!);
  }
  const takingPart = own.filter((noteRate) => noteRate < 0.4 * rate).length;
  return own.length >= SHORTEST && takingPart >= LEAST_TAKING_PART * own.length && median(own) < 0.6 * rate;
}

/** Undefined where the stretch's rate comes and goes. */
function zoneOf(
  stretch: Stretch,
  grid: NoteGrid,
  intervals: readonly ChangeInterval[],
  seasons: Float64Array,
  limit: number,
): Zone | undefined {
  const changes = stretchChanges(grid, intervals, stretch);
  const { uncertainty, freedom } = stretchRate(changes, stretch.pattern, seasons);
  const standardUncertainty = Math.hypot(stretch.uncertainty, uncertainty);
  if (!isSteady(-stretch.rate / standardUncertainty, freedom)) return undefined;
  return {
    fromMidi: grid.midis[stretch.first]!,
    toMidi: grid.midis[stretch.last]!,
    centsPerYear: stretch.rate,
    standardUncertainty,
    probability: Math.min(0.999, 1 - 0.04 * Math.exp(limit - stretch.score)),
    isAccelerating: growsWithTime(changes, intervals),
    fromInterval: stretch.pattern.fromInterval,
  };
}

/** The score that the strongest stretch of a steady instrument stays under, from simulated instruments of the same grid. */
function chanceLimit(grid: NoteGrid, courses: readonly Course[], random: () => number): number {
  const largest: number[] = [];
  for (let trial = 0; trial < SIMULATIONS; trial++) {
    const means = grid.variances.map((variances) =>
      variances.map((variance) => (Number.isFinite(variance) ? Math.sqrt(variance) * random() : Number.NaN)),
    );
    largest.push(largestScore(means, courses));
  }
  largest.sort((a, b) => a - b);
  return largest[Math.min(largest.length - 1, Math.floor((1 - CHANCE) * largest.length))]!;
}

/** Largest score of any stretch, the other demands left aside: the limit is on the safe side. */
function largestScore(means: readonly Float64Array[], courses: readonly Course[]): number {
  let largest = 0;
  const steady = alongPattern(means, courses[0]!);
  const coefficients = courseCoefficients(courses[0]!, steady);
  for (const course of courses) {
    const sums = runningSums(lessCourseOf(course, alongPattern(means, course), coefficients));
    for (const { first, last, own } of course.windows) {
      largest = Math.max(largest, -(sums[last + 1]! - sums[first]!) / Math.sqrt(own));
    }
  }
  return largest;
}
