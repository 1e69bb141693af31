/**
 * How an instrument kept its pitch, for one chart: the changes from each as-left to the next as-found added up, which is where its strings would
 * stand if nobody had tuned them, with the humidity at each visit. Seasons come and go in it; what slips or settles goes down and stays down.
 */
import type { Visit } from '../piano/instrument.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';

export type Movement = {
  readonly medianCents: number;
  /** Four strings in five lie between these. */
  readonly lowCents: number;
  readonly highCents: number;
  readonly stringCount: number;
};

export type CourseStep = {
  readonly fromDate: string;
  readonly toDate: string;
  /** True where nothing is known of the time before: the sum begins at nought. */
  readonly startsAnew: boolean;
  /** The sum up to `toDate`. */
  readonly whole: Movement;
  /** Of the strings that go flat by themselves, from where they were first read as they are now: a new pin begins anew. */
  readonly part: Movement | null;
};

export type PitchCourse = {
  /** Comparisons with a baseline only, oldest first. */
  readonly steps: readonly CourseStep[];
  readonly humidity: readonly { readonly on: string; readonly humidityPct: number }[];
};

export type NoteRange = { readonly fromMidi: number; readonly toMidi: number };

/** Fewer strings than this say nothing about a whole piano. Chosen. */
const LEAST_STRINGS = 5;

/**
 * A string without a reading in one step is taken to have moved as the middle string did.
 * @param partRanges strings to draw by themselves, from `slippingRanges`
 */
export function pitchCourse(
  drift: Pick<Drift, 'intervals' | 'detail'>,
  visits: readonly Visit[],
  partRanges: readonly NoteRange[],
): PitchCourse {
  const { strings } = drift.detail;
  const isPart = strings.map(({ midi }) => isWithin(midi, partRanges));
  const steps: CourseStep[] = [];
  const wasRead = strings.map(() => false);
  let sums = strings.map(() => 0);
  for (const [intervalIndex, { fromDate, toDate }] of drift.intervals.entries()) {
    const changes = changesOf(drift.detail, intervalIndex);
    if (changes.size < LEAST_STRINGS) continue;
    const startsAnew = steps.at(-1)?.toDate !== fromDate;
    const middle = movementOf([...changes.values()]).medianCents;
    sums = sums.map((sum, index) => (startsAnew ? 0 : sum) + (changes.get(index) ?? middle));
    for (const index of changes.keys()) wasRead[index] = true;
    const part = sums.filter((_, index) => isPart[index] && wasRead[index]);
    steps.push({
      fromDate,
      toDate,
      startsAnew,
      whole: movementOf(sums),
      part: part.length > 0 ? movementOf(part) : null,
    });
  }
  return { steps, humidity: humidityOf(visits) };
}

function changesOf({ changes }: Drift['detail'], intervalIndex: number): Map<number, number> {
  const own = changes.filter((change) => change.intervalIndex === intervalIndex);
  return new Map(own.map(({ stringIndex, cents }) => [stringIndex, cents]));
}

function humidityOf(visits: readonly Visit[]): PitchCourse['humidity'] {
  return visits
    .flatMap(({ visitedOn, humidityPct }) => (humidityPct === null ? [] : [{ on: visitedOn, humidityPct }]))
    .sort((a, b) => (a.on < b.on ? -1 : 1));
}

export function isWithin(midi: number, ranges: readonly NoteRange[]): boolean {
  return ranges.some(({ fromMidi, toMidi }) => midi >= fromMidi && midi <= toMidi);
}

/** @param cents at least one */
function movementOf(cents: readonly number[]): Movement {
  const sorted = [...cents].sort((a, b) => a - b);
  return {
    medianCents: quantile(sorted, 0.5),
    lowCents: quantile(sorted, 0.1),
    highCents: quantile(sorted, 0.9),
    stringCount: sorted.length,
  };
}

/** Between the two nearest values, by a straight line. */
function quantile(sorted: readonly number[], share: number): number {
  const position = share * (sorted.length - 1);
  const below = sorted[Math.floor(position)] ?? 0;
  const above = sorted[Math.ceil(position)] ?? below;
  return below + (position - Math.floor(position)) * (above - below);
}
