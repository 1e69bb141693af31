/** The judgement's workings, for charts: what each string did in each interval, and how much of it the whole instrument did. */
import type { ChangeTable, PianoString } from './changeRows.ts';
import type { WeatherFit } from './weatherModel.ts';

export type StringChange = {
  /** Index into `strings`. */
  readonly stringIndex: number;
  /** Index into the judgement's `intervals`. */
  readonly intervalIndex: number;
  /** As read: sharper is above zero. */
  readonly cents: number;
  /** What season, temperature, settling and the instrument's common course account for. */
  readonly wholeCents: number;
  /** What is left: the string's own. `cents` is the sum of both. */
  readonly ownCents: number;
  /** Standard deviation of the own part's noise: reading and stray movement. */
  readonly standardUncertaintyCents: number;
  /** Of reading alone. */
  readonly readingUncertaintyCents: number;
};

export type StringResponse = PianoString & {
  /** Per %RH; meaningless where humidity is not known. */
  readonly centsPerPct: number;
  readonly standardUncertainty: number;
};

export type DriftDetail = {
  readonly strings: readonly StringResponse[];
  readonly changes: readonly StringChange[];
  readonly isHumidityKnown: boolean;
  /** By interval: change of humidity as the strings show it, %RH, leaning on the hygrometer's; of no unit where that is not known. */
  readonly seasonPct: readonly number[];
  /** By interval: mean movement of the strings with the season taken out. */
  readonly commonCents: readonly number[];
};

export const NO_DETAIL: DriftDetail = {
  strings: [],
  changes: [],
  isHumidityKnown: false,
  seasonPct: [],
  commonCents: [],
};

/** @param course common course of the strings' rates, cents a year, by string */
export function driftDetail(table: ChangeTable, weather: WeatherFit, course: Float64Array): DriftDetail {
  const { strings, intervals, changes } = table;
  return {
    strings: strings.map((string, i) => ({
      ...string,
      centsPerPct: weather.responses[i]!,
      standardUncertainty: weather.responseUncertainties[i]!,
    })),
    changes: changes.flatMap((row, index) => {
      const { stringIndex: i, intervalIndex: k, cents } = row;
      if (!intervals[k]!.hasBaseline) return [];
      const strayedResponse = weather.responses[i]! - weather.responseCourse.means[i]!;
      const season = strayedResponse * weather.seasons[k]!;
      const ownCents = weather.ownCents[index]! - season - course[i]! * intervals[k]!.years;
      return [
        {
          stringIndex: i,
          intervalIndex: k,
          cents,
          ownCents,
          wholeCents: cents - ownCents,
          standardUncertaintyCents: weather.sigmas[index]!,
          readingUncertaintyCents: Math.sqrt(row.varianceCents2),
        },
      ];
    }),
    isHumidityKnown: weather.isHumidityKnown,
    seasonPct: Array.from(weather.seasons),
    commonCents: Array.from(weather.commonCents),
  };
}
