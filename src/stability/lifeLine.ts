/** An instrument's overall pitch through the years: where each visit found it and where it was left. */
import { medianOf, robustScatter } from '../piano/robustStatistics.ts';
import type { Drift } from './drift/analyseDrift.ts';
import type { HistoryReading } from './drift/history.ts';

export type OverallPitch = {
  readonly cents: number;
  /** Of the median, as if the strings moved independently. */
  readonly standardUncertaintyCents: number;
  readonly stringCount: number;
};

export type LifeLineVisit = {
  readonly visitedOn: string;
  readonly humidityPct: number | null;
  readonly temperatureC: number | null;
  /** Null where that survey was not made, or nothing of it can be used. */
  readonly asFound: OverallPitch | null;
  readonly asLeft: OverallPitch | null;
};

/** The strings that a piano's pitch is told by: C3 to C5, where octaves are hardly stretched. */
const MIDDLE = { fromMidi: 48, toMidi: 72 };
/** The median of normal values scatters by √(π/2) more than their mean. */
const MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

/**
 * Median of all strings' departures from where each usually stands, plus where the middle of the compass usually stands against equal
 * temperament. So a survey of a few notes tells the same pitch as one of all.
 * @param atHumidityPct where given, each reading is moved to this humidity by its string's own response; visits without a
 *   humidity reading are then left out, and so is everything where the responses are not known
 */
export function lifeLine(
  readings: readonly HistoryReading[],
  detail: Drift['detail'],
  atHumidityPct: number | null = null,
): LifeLineVisit[] {
  const responses = new Map(detail.strings.map((string) => [keyOf(string), string.centsPerPct]));
  const corrected = (reading: HistoryReading): number | null => {
    if (atHumidityPct === null) return reading.cents;
    const response = detail.isHumidityKnown ? responses.get(keyOf(reading)) : undefined;
    if (response === undefined || reading.humidityPct === null) return null;
    return reading.cents - response * (reading.humidityPct - atHumidityPct);
  };
  const usual = usualPlaces(readings);
  const middle = [...usual].filter(([key]) => isMiddle(key >> 2)).map(([, cents]) => cents);
  const level = medianOf(middle.length > 0 ? middle : usual.size > 0 ? [...usual.values()] : [0]);
  const pitch = (own: readonly HistoryReading[]): OverallPitch | null => {
    const departures = own.flatMap((reading) => {
      const cents = corrected(reading);
      return cents === null ? [] : [cents - (usual.get(keyOf(reading)) ?? 0)];
    });
    return departures.length === 0 ? null : overall(departures, level);
  };
  return [...groupByDate(readings)].map(([visitedOn, own]) => ({
    visitedOn,
    humidityPct: own.find((reading) => reading.humidityPct !== null)?.humidityPct ?? null,
    temperatureC: own.find((reading) => reading.temperatureC !== null)?.temperatureC ?? null,
    asFound: pitch(own.filter((reading) => reading.stage === 'as-found')),
    asLeft: pitch(own.filter((reading) => reading.stage === 'as-left')),
  }));
}

function keyOf({ midi, stringPosition }: { readonly midi: number; readonly stringPosition: number }): number {
  return midi * 4 + stringPosition;
}

function isMiddle(midi: number): boolean {
  return midi >= MIDDLE.fromMidi && midi <= MIDDLE.toMidi;
}

/** Median of each string's readings, as left where there are such. */
function usualPlaces(readings: readonly HistoryReading[]): Map<number, number> {
  const left = groupBy(
    readings.filter((reading) => reading.stage === 'as-left'),
    keyOf,
  );
  const all = groupBy(readings, keyOf);
  return new Map([...all].map(([key, own]) => [key, medianOf((left.get(key) ?? own).map((reading) => reading.cents))]));
}

function overall(departures: readonly number[], level: number): OverallPitch {
  const middle = medianOf(departures);
  const scatter = robustScatter(departures, middle);
  return {
    cents: level + middle,
    standardUncertaintyCents: (MEDIAN_OVER_MEAN * scatter) / Math.sqrt(departures.length),
    stringCount: departures.length,
  };
}

function groupByDate(readings: readonly HistoryReading[]): [string, HistoryReading[]][] {
  return [...groupBy(readings, (reading) => reading.visitedOn)].sort(([a], [b]) => (a < b ? -1 : 1));
}

function groupBy<Key>(
  readings: readonly HistoryReading[],
  key: (reading: HistoryReading) => Key,
): Map<Key, HistoryReading[]> {
  const groups = new Map<Key, HistoryReading[]>();
  for (const reading of readings) {
    const own = groups.get(key(reading));
    if (own) own.push(reading);
    else groups.set(key(reading), [reading]);
  }
  return groups;
}
