/** What one string's false beat did over the visits, with the work in between, and what work on it changed. */
import type { InstrumentEvent } from '../../piano/instrument.ts';
import type { StringDecision } from '../../piano/stringingRecords.ts';
import { type AfterWork, afterWork } from '../../stringing/decisions/afterWork.ts';
import { type BeatVisit, falseBeatHistory } from '../../stringing/falseBeats/falseBeatHistory.ts';
import { isSameString, type StringPlace } from './stringKey.ts';
import type { BenchOfStrings, StringRecords, StringTake } from './stringReadings.ts';
import { takesOfString } from './stringReadings.ts';

export type HistoryRow =
  | {
      readonly kind: 'survey';
      readonly on: string;
      readonly key: string;
      readonly stage: StringTake['survey']['stage'];
      readonly visit: BeatVisit;
    }
  | { readonly kind: 'event'; readonly on: string; readonly key: string; readonly event: InstrumentEvent }
  | { readonly kind: 'work'; readonly on: string; readonly key: string; readonly decision: StringDecision }
  | {
      readonly kind: 'trial';
      readonly on: string;
      readonly key: string;
      readonly trial: BenchOfStrings['trials'][number];
    };

/** The newest first. Only surveys that recorded the string stand there. */
export function stringHistory(records: StringRecords, bench: BenchOfStrings, place: StringPlace): HistoryRow[] {
  const kept = takesOfString(records.takes, place).filter(({ take }) => take.isKept);
  const surveys = kept.flatMap(({ take, survey, visit }): HistoryRow[] => {
    const [seen] = falseBeatHistory([{ recordedOn: visit.visitedOn, readings: [take.reading] }], place);
    return seen ? [{ kind: 'survey', on: visit.visitedOn, key: take.id, stage: survey.stage, visit: seen }] : [];
  });
  const events = records.events
    .filter((event) => isWireWork(event) && isCovered(place, event))
    .map((event): HistoryRow => ({ kind: 'event', on: event.happenedOn, key: event.id, event }));
  const work = doneWork(bench, place).map(
    (decision): HistoryRow => ({ kind: 'work', on: decision.doneOn ?? '', key: decision.id, decision }),
  );
  const trials = bench.trials
    .filter((trial) => isSameString(trial, place))
    .map((trial): HistoryRow => ({ kind: 'trial', on: trial.triedAt.slice(0, 10), key: trial.id, trial }));
  // Sorting is stable: of one day what was recorded first stays the older one, work after the survey before it.
  return [...surveys, ...trials, ...events, ...work].sort((a, b) => a.on.localeCompare(b.on)).reverse();
}

function isWireWork({ kind }: InstrumentEvent): boolean {
  return kind === 'restrung' || kind === 'string-replaced' || kind === 'pin-replaced' || kind === 'block-work';
}

function isCovered({ midi }: StringPlace, { fromMidi, toMidi }: InstrumentEvent): boolean {
  return midi >= (fromMidi ?? 0) && midi <= (toMidi ?? Number.POSITIVE_INFINITY);
}

function doneWork({ decisions }: BenchOfStrings, place: StringPlace): StringDecision[] {
  return decisions.filter(
    (decision) => isSameString(decision, place) && decision.doneOn !== null && decision.choice !== 'leave',
  );
}

export type WorkOutcome = { readonly decision: StringDecision; readonly outcome: AfterWork['outcome'] | 'no before' };

/** Each work done on the string against its last recording before that day and its first one after it. */
export function workOutcomes(takes: readonly StringTake[], bench: BenchOfStrings, place: StringPlace): WorkOutcome[] {
  const kept = takesOfString(takes, place).filter(({ take }) => take.isKept);
  return doneWork(bench, place).map((decision) => {
    const doneOn = decision.doneOn ?? '';
    const before = kept.findLast(({ visit }) => visit.visitedOn < doneOn);
    const after = kept.find(({ visit }) => visit.visitedOn > doneOn);
    if (!before) return { decision, outcome: 'no before' };
    return { decision, outcome: afterWork(before.take.reading, after?.take.reading).outcome };
  });
}
