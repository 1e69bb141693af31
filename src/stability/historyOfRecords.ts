/** What an instrument's records say of its strings over the years, as the judgement of its pins wants it. */
import { hzToCents } from '../piano/cents.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../piano/instrument.ts';
import { midiToHz } from '../piano/note.ts';
import type { NoteReading, StringPosition } from '../piano/reading.ts';
import { isWithin } from './drift/changeTable.ts';
import type { DriftInstrument, HistoryEvent, HistoryReading } from './drift/history.ts';
import { referencedCents } from './referencedCents.ts';

export type InstrumentRecords = {
  readonly instrument: Pick<Instrument, 'compass' | 'bassBridgeTopMidi' | 'strutsAfterMidi'>;
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  /** Kept takes, each with the reading that the record keeps. */
  readonly takes: readonly Take[];
  readonly events: readonly InstrumentEvent[];
};

export type InstrumentHistory = {
  readonly readings: readonly HistoryReading[];
  readonly events: readonly HistoryEvent[];
  readonly instrument: DriftInstrument;
  /** Takes that say nothing about a string, by reason. */
  readonly leftOut: Readonly<Record<LeftOut, number>>;
};

export type LeftOut = 'unusable' | 'string-unknown';

/** All offsets stand against this A4, whatever a visit's pitch standard was: only so can visits be compared. */
export const COMMON_PITCH_HZ = 440;

/**
 * Offsets in cents against equal temperament at COMMON_PITCH_HZ, from the frequencies and not from the stored cents, partial by partial
 * where a string's readings have partials in common (referencedCents.ts), else of partial 1. Open unisons have string position 0 and are
 * compared with open unisons only; a centre string behind a felt strip and the same string played alone are one string. Readings come
 * in the order of their visits. Takes of unknown visits or surveys are passed over.
 */
export function historyOfRecords(records: InstrumentRecords): InstrumentHistory {
  const steps = historyInSteps(records);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, leaving off after every few strings, so that whoever asks on a page's own thread can let it breathe. */
export function* historyInSteps(records: InstrumentRecords): Generator<void, InstrumentHistory, void> {
  const visits = new Map(records.visits.map((visit) => [visit.id, visit]));
  const surveys = new Map(records.surveys.map((survey) => [survey.id, survey]));
  const read: Read[] = [];
  const leftOut = { unusable: 0, 'string-unknown': 0 };
  for (const take of records.takes) {
    const survey = surveys.get(take.surveyId);
    const visit = survey && visits.get(survey.visitId);
    if (!survey || !visit) continue;
    const history = readingOf(take, survey, visit);
    if (typeof history === 'string') leftOut[history] += 1;
    else read.push({ history, reading: take.reading });
  }
  const { compass, bassBridgeTopMidi, strutsAfterMidi } = records.instrument;
  return {
    readings: (yield* partialByPartial(read, records.events)).sort(inOrder),
    events: records.events.map(({ happenedOn, kind, fromMidi, toMidi }) => ({ happenedOn, kind, fromMidi, toMidi })),
    instrument: { compass, bassBridgeTopMidi, strutsAfterMidi },
    leftOut,
  };
}

type Read = { readonly history: HistoryReading; readonly reading: NoteReading };

/** Work after which a string has another wire. */
const NEW_WIRE: readonly InstrumentEvent['kind'][] = ['restrung', 'string-replaced'];

/** So many strings take a page's slow thread less than a twentieth of a second. */
const STRINGS_PER_STEP = 8;

/** Each string's readings on a scale of its own, anew with each wire. */
function* partialByPartial(
  read: readonly Read[],
  events: readonly InstrumentEvent[],
): Generator<void, HistoryReading[], void> {
  const rewired = events.filter(({ kind }) => NEW_WIRE.includes(kind));
  const wires = new Map<string, { nominalHz: number; read: Read[] }>();
  for (const one of read) {
    const key = wireOf(one.history, rewired);
    const own = wires.get(key) ?? { nominalHz: midiToHz(one.history.midi, COMMON_PITCH_HZ), read: [] };
    own.read.push(one);
    wires.set(key, own);
  }
  const readings: HistoryReading[] = [];
  for (const [index, { nominalHz, read: own }] of [...wires.values()].entries()) {
    if (index > 0 && index % STRINGS_PER_STEP === 0) yield;
    const centsOf = referencedCents(
      own.map(({ reading }) => reading),
      nominalHz,
    );
    for (const { history, reading } of own) readings.push({ ...history, cents: centsOf(reading) });
  }
  return readings;
}

/** A string and how often it had got new wire by then; work of the day itself lies between what was found and what was left. */
function wireOf(
  { midi, stringPosition, visitedOn, stage }: HistoryReading,
  rewired: readonly InstrumentEvent[],
): string {
  const count = rewired.filter(
    ({ happenedOn, fromMidi, toMidi }) =>
      isWithin(midi, fromMidi, toMidi) && (happenedOn < visitedOn || (happenedOn === visitedOn && stage === 'as-left')),
  ).length;
  return `${midi} ${stringPosition} ${count}`;
}

function readingOf({ midi, stringPosition, reading }: Take, survey: Survey, visit: Visit): HistoryReading | LeftOut {
  if (!reading.quality.isUsable || !(reading.partial1Hz > 0)) return 'unusable';
  const string = stringOf(survey, stringPosition);
  if (string === null) return 'string-unknown';
  return {
    visitedOn: visit.visitedOn,
    stage: survey.stage,
    humidityPct: visit.humidityPct,
    temperatureC: visit.temperatureC,
    midi,
    stringPosition: string,
    cents: hzToCents(reading.partial1Hz, midiToHz(midi, COMMON_PITCH_HZ)),
    standardUncertaintyCents: uncertaintyOf(reading),
  };
}

/** Null where a string was played alone and nobody said which. */
function stringOf({ strings }: Survey, stated: StringPosition): StringPosition | null {
  if (strings === 'open unisons') return 0;
  if (stated !== 0) return stated;
  return strings === 'centre strings' ? 2 : null;
}

function uncertaintyOf({ offsetStandardUncertaintyCents }: NoteReading): number | null {
  return offsetStandardUncertaintyCents > 0 ? offsetStandardUncertaintyCents : null;
}

function inOrder(a: HistoryReading, b: HistoryReading): number {
  if (a.visitedOn !== b.visitedOn) return a.visitedOn < b.visitedOn ? -1 : 1;
  if (a.stage !== b.stage) return a.stage === 'as-found' ? -1 : 1;
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
