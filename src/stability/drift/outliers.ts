/** Single readings that no slow cause explains: a note mis-set by the tuner, a wrong take. They do not come again. */
import type { ChangeInterval, ChangeRow, PianoString, SurveyValues } from './changeRows.ts';
import { surveyKey } from './changeTable.ts';
import { type OutlierReason, outlierSentence } from './outlierReason.ts';
import { median, robustDeviation } from './statistics.ts';

export type Outlier = {
  readonly visitedOn: string;
  readonly midi: number;
  readonly stringPosition: PianoString['stringPosition'];
  readonly cents: number;
  readonly because: OutlierReason;
  /** The same in English. */
  readonly reason: string;
};

/** An outlier stands at least this far off, in cents and in standard deviations. */
const LEAST_CENTS = 4;
const LEAST_SIGMA = 5;
const NEIGHBOURS = 6;

/** From the residuals of the changes; which end of the interval was wrong is told by the levels of the two surveys. */
export function findOutliers(
  strings: readonly PianoString[],
  intervals: readonly ChangeInterval[],
  changes: readonly ChangeRow[],
  residuals: Float64Array,
  sigmas: Float64Array,
  surveys: ReadonlyMap<string, SurveyValues>,
): Outlier[] {
  const scale = Math.max(
    1,
    robustDeviation(
      Array.from(residuals, (value, index) => value / sigmas[index]!),
      0,
    ),
  );
  const neighbours = neighboursOf(strings);
  const levels = new Map([...surveys].map(([key, survey]) => [key, levelsOf(survey, strings, neighbours)]));
  const usual = usualLevels(strings, levels);
  const found = new Map<string, Outlier>();
  changes.forEach((row, index) => {
    const off = residuals[index]!;
    if (!intervals[row.intervalIndex]!.hasBaseline) return;
    if (Math.abs(off) < Math.max(LEAST_CENTS, LEAST_SIGMA * scale * sigmas[index]!)) return;
    const outlier = blame(row, off, strings, intervals, levels, usual);
    const key = `${outlier.visitedOn}/${row.stringIndex}`;
    const known = found.get(key);
    if (!known || Math.abs(known.cents) < Math.abs(outlier.cents)) found.set(key, outlier);
  });
  for (const outlier of misSet(strings, levels, usual, surveys)) {
    const key = `${outlier.visitedOn}/${strings.findIndex((s) => s.midi === outlier.midi && s.stringPosition === outlier.stringPosition)}`;
    if (!found.has(key)) found.set(key, outlier);
  }
  return [...found.values()].sort((a, b) => (a.visitedOn < b.visitedOn ? -1 : 1) || a.midi - b.midi);
}

/** For each string, the others within NEIGHBOURS semitones. */
function neighboursOf(strings: readonly PianoString[]): number[][] {
  return strings.map(({ midi }, i) =>
    strings.map((_, j) => j).filter((j) => j !== i && Math.abs(strings[j]!.midi - midi) <= NEIGHBOURS),
  );
}

/** Each string's cents against the course of its neighbours in the same survey. */
function levelsOf(
  survey: SurveyValues,
  strings: readonly PianoString[],
  neighbours: readonly (readonly number[])[],
): Float64Array {
  const cents = strings.map(
    ({ midi, stringPosition }) => survey.values.get(midi * 4 + stringPosition)?.cents ?? Number.NaN,
  );
  return Float64Array.from(cents, (value, i) => {
    const around = neighbours[i]!.map((j) => cents[j]!).filter((other) => !Number.isNaN(other));
    return around.length >= 3 ? value - median(around) : Number.NaN;
  });
}

function usualLevels(strings: readonly PianoString[], levels: ReadonlyMap<string, Float64Array>): Float64Array {
  return Float64Array.from(strings, (_, i) => {
    const values = [...levels.values()].map((level) => level[i]!).filter((value) => !Number.isNaN(value));
    return values.length >= 3 ? median(values) : Number.NaN;
  });
}

function blame(
  row: ChangeRow,
  off: number,
  strings: readonly PianoString[],
  intervals: readonly ChangeInterval[],
  levels: ReadonlyMap<string, Float64Array>,
  usual: Float64Array,
): Outlier {
  const { fromDate, toDate } = intervals[row.intervalIndex]!;
  const i = row.stringIndex;
  const departure = (key: string) => Math.abs((levels.get(key)?.[i] ?? Number.NaN) - usual[i]!);
  const before = departure(surveyKey(fromDate, 'as-left'));
  const after = departure(surveyKey(toDate, 'as-found'));
  const isBaseline = before > after;
  const { midi, stringPosition } = strings[i]!;
  const offCents = Math.abs(off);
  const because: OutlierReason = isBaseline
    ? { kind: 'stood-off-once', offCents }
    : { kind: 'found-off-once', offCents, direction: off > 0 ? 'sharp' : 'flat' };
  return {
    visitedOn: isBaseline ? fromDate : toDate,
    midi,
    stringPosition,
    cents: isBaseline ? -off : off,
    because,
    reason: outlierSentence(because),
  };
}

/** As-left readings far off where this string is usually left: the tuner set it so, which no change shows. */
function misSet(
  strings: readonly PianoString[],
  levels: ReadonlyMap<string, Float64Array>,
  usual: Float64Array,
  surveys: ReadonlyMap<string, SurveyValues>,
): Outlier[] {
  return [...levels].flatMap(([key, level]) => {
    const survey = surveys.get(key)!;
    if (survey.stage !== 'as-left') return [];
    const departures = Array.from(level, (value, i) => value - usual[i]!);
    const scale = robustDeviation(
      departures.filter((value) => !Number.isNaN(value)),
      0,
    );
    return departures.flatMap((cents, i) => {
      if (Number.isNaN(cents) || Math.abs(cents) < Math.max(LEAST_CENTS + 1, 6 * scale)) return [];
      const { midi, stringPosition } = strings[i]!;
      const because: OutlierReason = { kind: 'left-off', offCents: Math.abs(cents) };
      return [{ visitedOn: survey.visitedOn, midi, stringPosition, cents, because, reason: outlierSentence(because) }];
    });
  });
}
