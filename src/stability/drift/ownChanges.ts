/** Each string's changes beyond what the whole instrument did: what its own rate is judged from. */
import type { ChangeTable } from './changeRows.ts';
import type { WeatherFit } from './weatherModel.ts';

export type OwnChange = {
  readonly intervalIndex: number;
  readonly years: number;
  readonly cents: number;
  readonly sigmaCents: number;
  /** How far the season went in this interval, %RH; a string's response differs from its neighbours' course, so it moves with this. */
  readonly season: number;
};

export type OwnHistory = {
  readonly changes: readonly OwnChange[];
  /** Standard deviation of the string's response about its neighbours' course, cents per %RH. */
  readonly responseDeviation: number;
};

/** In its first year new wire does what it likes: nothing of that is held against a pin. */
const FIRST_YEAR = 1;

/** One entry a string of the table. */
export function ownHistories({ strings, intervals, changes }: ChangeTable, weather: WeatherFit): OwnHistory[] {
  const byString = strings.map((): OwnChange[] => []);
  changes.forEach(({ stringIndex, intervalIndex, sinceAnewYears }, index) => {
    if (sinceAnewYears !== null && sinceAnewYears < FIRST_YEAR) return;
    byString[stringIndex]!.push({
      intervalIndex,
      years: intervals[intervalIndex]!.years,
      cents: weather.ownCents[index]!,
      sigmaCents: weather.sigmas[index]!,
      season: weather.seasons[intervalIndex]!,
    });
  });
  return byString.map((own, i) => ({ changes: own, responseDeviation: weather.responseCourse.deviations[i]! }));
}

/** Without the intervals that have no baseline, whose changes are against where a string is usually left. */
export function seenHistory(history: OwnHistory, intervals: readonly { readonly hasBaseline: boolean }[]): OwnHistory {
  return { ...history, changes: history.changes.filter((change) => intervals[change.intervalIndex]!.hasBaseline) };
}

/** Without a common course of rates, cents a year. */
export function lessCourse(history: OwnHistory, courseCentsPerYear: number): OwnHistory {
  const changes = history.changes.map((change) => ({
    ...change,
    cents: change.cents - courseCentsPerYear * change.years,
  }));
  return { ...history, changes };
}
