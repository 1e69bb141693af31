/** From readings to changes: for each string and interval, what it did between a baseline and the next as-found. */
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import type { InstrumentEvent, Survey, SurveyStage, Visit } from '../../piano/instrument.ts';
import { type Interval, intervalsOf, yearsBetween } from '../changeIntervals.ts';
import type { ChangeInterval, ChangeRow, ChangeTable, PianoString, SurveyValues } from './changeRows.ts';
import { type HistoryEvent, type HistoryReading, usualUncertaintyCents } from './history.ts';
import { type UnreadInterval, unreadTuningChanges } from './unreadTunings.ts';

/** Work that makes a string or its pin a new one: what happened before says nothing about it. */
const STARTS_ANEW: readonly HistoryEvent['kind'][] = ['restrung', 'string-replaced', 'pin-replaced', 'block-work'];

export function changeTable(readings: readonly HistoryReading[], events: readonly HistoryEvent[]): ChangeTable {
  const strings = stringsOf(readings);
  const surveys = surveysOf(readings);
  const paired = intervalsOf(visitsOf(readings), surveyRecords(surveys), events.map(asInstrumentEvent));
  const changes: ChangeRow[] = [];
  const intervals = paired.map((interval, intervalIndex) => {
    const rows = changesOf(interval, surveys, strings, events);
    changes.push(...rows.map((row) => ({ ...row, intervalIndex })));
    return {
      fromDate: interval.from.visitedOn,
      toDate: interval.to.visitedOn,
      years: interval.years,
      humidityChangePct: interval.humidityChangePct,
      hasBaseline: interval.baseline.known,
      missingCount: strings.length - rows.length,
    };
  });
  changes.push(...unreadTuningChanges(strings, surveys, unreadIntervals(intervals, surveys, events)));
  return { strings, intervals, changes: withoutFormerStrings(changes, strings, intervals, events) };
}

/** Intervals that begin with a tuning which nobody surveyed. */
function unreadIntervals(
  intervals: readonly ChangeInterval[],
  surveys: ReadonlyMap<string, SurveyValues>,
  events: readonly HistoryEvent[],
): UnreadInterval[] {
  return intervals.flatMap(({ fromDate, toDate, hasBaseline }, intervalIndex) => {
    const asFound = surveys.get(surveyKey(toDate, 'as-found'));
    if (hasBaseline || !asFound) return [];
    const renewals = events.filter(
      (event) => STARTS_ANEW.includes(event.kind) && event.happenedOn >= fromDate && event.happenedOn < toDate,
    );
    return [
      {
        intervalIndex,
        asFound,
        sinceAnewYears: (midi: number) => sinceAnewYears(midi, fromDate, events),
        isRenewed: (midi: number) => renewals.some((event) => isWithin(midi, event.fromMidi, event.toMidi)),
      },
    ];
  });
}

function stringsOf(readings: readonly HistoryReading[]): PianoString[] {
  const seen = new Map<number, PianoString>();
  for (const { midi, stringPosition } of readings) seen.set(midi * 4 + stringPosition, { midi, stringPosition });
  return [...seen.entries()].sort(([a], [b]) => a - b).map(([, string]) => string);
}

/** One survey a date and stage; a string read twice in it counts with the mean of its readings. */
export function surveysOf(readings: readonly HistoryReading[]): Map<string, SurveyValues> {
  const grouped = new Map<string, HistoryReading[]>();
  for (const reading of readings) {
    const key = surveyKey(reading.visitedOn, reading.stage);
    grouped.set(key, [...(grouped.get(key) ?? []), reading]);
  }
  return new Map([...grouped].map(([key, rows]) => [key, surveyValues(rows)]));
}

function surveyValues(rows: readonly HistoryReading[]): SurveyValues {
  const values = new Map<number, { cents: number; varianceCents2: number; count: number }>();
  for (const row of rows) {
    const key = row.midi * 4 + row.stringPosition;
    const variance = (row.standardUncertaintyCents ?? usualUncertaintyCents(row.midi)) ** 2;
    const before = values.get(key) ?? { cents: 0, varianceCents2: 0, count: 0 };
    const count = before.count + 1;
    values.set(key, {
      cents: before.cents + (row.cents - before.cents) / count,
      varianceCents2: Math.max(before.varianceCents2, variance),
      count,
    });
  }
  return { visitedOn: rows[0]!.visitedOn, stage: rows[0]!.stage, values };
}

export function surveyKey(date: string, stage: SurveyStage): string {
  return `${date}/${stage}`;
}

function visitsOf(readings: readonly HistoryReading[]): Visit[] {
  const dates = [...new Set(readings.map((reading) => reading.visitedOn))].sort();
  return dates.map((visitedOn) => {
    const rows = readings.filter((reading) => reading.visitedOn === visitedOn);
    return {
      id: visitedOn as VisitId,
      instrumentId: '' as Visit['instrumentId'],
      visitedOn,
      visitedBy: '',
      humidityPct: rows.find((row) => row.humidityPct !== null)?.humidityPct ?? null,
      temperatureC: rows.find((row) => row.temperatureC !== null)?.temperatureC ?? null,
      pitchStandardHz: 440,
      remark: '',
    };
  });
}

function surveyRecords(surveys: ReadonlyMap<string, SurveyValues>): Survey[] {
  return [...surveys].map(([key, { visitedOn, stage }]) => ({
    id: key as SurveyId,
    visitId: visitedOn as VisitId,
    instrumentId: '' as Survey['instrumentId'],
    stage,
    startedAt: visitedOn,
    finishedAt: visitedOn,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'centre strings',
  }));
}

function asInstrumentEvent(event: HistoryEvent): InstrumentEvent {
  return { ...event, id: '' as InstrumentEvent['id'], instrumentId: '' as InstrumentEvent['instrumentId'], remark: '' };
}

function changesOf(
  interval: Interval,
  surveys: ReadonlyMap<string, SurveyValues>,
  strings: readonly PianoString[],
  events: readonly HistoryEvent[],
): Omit<ChangeRow, 'intervalIndex'>[] {
  if (!interval.baseline.known) return [];
  const before = surveys.get(interval.baseline.surveyIds[0] ?? '');
  const after = surveys.get(interval.asFoundSurveyIds[0] ?? '');
  if (!before || !after) return [];
  return strings.flatMap((string, stringIndex) => {
    const key = string.midi * 4 + string.stringPosition;
    const was = before.values.get(key);
    const is = after.values.get(key);
    const isAnew = interval.startedAnew.some((range) => isWithin(string.midi, range.fromMidi, range.toMidi));
    if (!was || !is || isAnew) return [];
    return [
      {
        stringIndex,
        cents: is.cents - was.cents,
        varianceCents2: was.varianceCents2 + is.varianceCents2,
        sinceAnewYears: sinceAnewYears(string.midi, interval.from.visitedOn, events),
      },
    ];
  });
}

function sinceAnewYears(midi: number, date: string, events: readonly HistoryEvent[]): number | null {
  const dates = events
    .filter((event) => STARTS_ANEW.includes(event.kind) && isWithin(midi, event.fromMidi, event.toMidi))
    .map((event) => event.happenedOn)
    .filter((happenedOn) => happenedOn <= date)
    .sort();
  const last = dates.at(-1);
  return last === undefined ? null : yearsBetween(last, date);
}

/** Changes of a string or pin that has since been replaced are another string's. */
function withoutFormerStrings(
  changes: readonly ChangeRow[],
  strings: readonly PianoString[],
  intervals: readonly ChangeInterval[],
  events: readonly HistoryEvent[],
): ChangeRow[] {
  const renewals = events.filter((event) => STARTS_ANEW.includes(event.kind));
  return changes.filter((row) => {
    const { midi } = strings[row.stringIndex]!;
    const { toDate } = intervals[row.intervalIndex]!;
    return !renewals.some((event) => isWithin(midi, event.fromMidi, event.toMidi) && event.happenedOn >= toDate);
  });
}

export function isWithin(midi: number, fromMidi: number | null, toMidi: number | null): boolean {
  return (fromMidi === null || midi >= fromMidi) && (toMidi === null || midi <= toMidi);
}
