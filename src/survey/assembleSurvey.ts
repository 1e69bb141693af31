/** The takes of one recording, measured one by one, become the document of a survey. */
import { type Compass, compassToText, isInCompass, notesOf } from '../piano/compass.ts';
import { midiToName } from '../piano/note.ts';
import type { NoNoteReason, NoteReading, TakeOutcome } from '../piano/reading.ts';
import { recordedStrings } from './recordedReading.ts';
import type { PooledRepeatability, RepeatedStrikes } from './repeatability.ts';
import { bestTakeIndex } from './takeChoice.ts';

export type HeardTake = {
  readonly outcome: TakeOutcome;
  /** Of the strike, from the start of the recording. */
  readonly onsetS: number;
  /** Frames are missing inside the take. */
  readonly hasHole: boolean;
};

export type RepeatedNote = {
  readonly midi: number;
  readonly keptIndex: number;
  readonly droppedIndexes: number[];
  /** What strikes of this note differ by, one sigma; null where no two takes can be compared. */
  readonly repeatabilityCents: number | null;
};

export type SurveyDocument = {
  /**
   * In the order played, every take. The kept take of a string that was struck several times carries the larger of its own
   * uncertainty and what strikes differ by; every other take is as measured.
   */
  readonly readings: NoteReading[];
  /** Notes of the compass that were never heard, not even in a take that cannot be used. */
  readonly skippedMidi: number[];
  /** Indexes into `readings`. */
  readonly repeated: RepeatedNote[];
  /** What strikes differ by over several notes; empty where too few were repeated. */
  readonly pooledRepeatability: readonly PooledRepeatability[];
  /** One plain sentence each, with the time in the recording. */
  readonly warnings: string[];
};

/** @param takes in any order: they may have been measured on several threads */
export function assembleSurvey(takes: readonly HeardTake[], compass: Compass): SurveyDocument {
  const inOrder = [...takes].sort((a, b) => a.onsetS - b.onsetS);
  const measured = inOrder.flatMap((take) =>
    take.outcome.found ? [readingOf(take.outcome.reading, take.hasHole)] : [],
  );
  const { readings, repeated, pooledRepeatability, disagreeing } = withRepeatability(measured);
  const heard = new Set(readings.map((reading) => reading.midi));
  return {
    readings,
    skippedMidi: notesOf(compass).filter((midi) => !heard.has(midi)),
    repeated,
    pooledRepeatability,
    warnings: [
      ...(inOrder.length === 0 ? ['No note was heard in this recording.'] : []),
      ...inOrder.flatMap(nothingFound),
      ...readings.flatMap((reading) => outsideCompass(reading, compass)),
      ...onlyUnusable(readings),
      ...disagreeing,
    ],
  };
}

/** What follows a hole is shifted in time, so its frequencies cannot be trusted. */
function readingOf(reading: NoteReading, hasHole: boolean): NoteReading {
  if (!hasHole) return reading;
  const { quality } = reading;
  const faults = [...new Set([...quality.faults, 'hole-in-recording' as const])];
  return { ...reading, quality: { ...quality, isUsable: false, faults } };
}

type Repetition = Pick<SurveyDocument, 'readings' | 'repeated' | 'pooledRepeatability'> & {
  readonly disagreeing: string[];
};

function withRepeatability(measured: readonly NoteReading[]): Repetition {
  const choices = choicesOf(measured);
  const { strings, pooled } = recordedStrings(
    choices.flatMap(({ keptIndex, droppedIndexes }) => {
      const kept = measured[keptIndex];
      return kept ? [{ kept, others: droppedIndexes.flatMap((index) => measured[index] ?? []) }] : [];
    }),
  );
  const readings = [...measured];
  for (const [index, { keptIndex }] of choices.entries()) {
    const recorded = strings[index]?.reading;
    if (recorded) readings[keptIndex] = recorded;
  }
  const repeated = choices.map((choice, index) => ({
    ...choice,
    repeatabilityCents: strings[index]?.repeatabilityCents ?? null,
  }));
  const disagreeing = strings.flatMap(({ strikes }) => (strikes?.disagrees ? [disagreement(strikes)] : []));
  return { readings, repeated, pooledRepeatability: pooled, disagreeing };
}

function disagreement({ midi, takeCount, scatterCents }: RepeatedStrikes): string {
  return `The ${takeCount} takes of ${midiToName(midi)} scatter by ${scatterCents.toFixed(1)} cents: the string was moved between them, or one of them is wrong.`;
}

type Choice = Omit<RepeatedNote, 'repeatabilityCents'>;

function choicesOf(readings: readonly NoteReading[]): Choice[] {
  const strings = new Map<string, number[]>();
  for (const [index, { midi, stringPosition }] of readings.entries()) {
    const key = `${midi}/${stringPosition}`;
    strings.set(key, [...(strings.get(key) ?? []), index]);
  }
  return [...strings.values()].flatMap((indexes) => {
    const taken = indexes.flatMap((index) => readings[index] ?? []);
    const [first] = taken;
    const keptIndex = indexes[bestTakeIndex(taken) ?? -1];
    if (!first || keptIndex === undefined || indexes.length < 2) return [];
    return [{ midi: first.midi, keptIndex, droppedIndexes: indexes.filter((index) => index !== keptIndex) }];
  });
}

/** @example timeInRecording(75.26) // '1:15.3' */
export function timeInRecording(seconds: number): string {
  const tenths = Math.round(10 * seconds);
  const minutes = Math.floor(tenths / 600);
  return `${minutes}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`;
}

const NOTHING_FOUND: Readonly<Record<NoNoteReason, string>> = {
  silence: 'nothing but silence',
  'too-short': 'a sound too short to measure',
  'no-pitch': 'a sound without the pitch of a note',
  knock: 'a knock',
  speech: 'speech',
  'two-notes': 'two notes at once',
};

function nothingFound({ outcome, onsetS }: HeardTake): string[] {
  if (outcome.found) return [];
  const detail = outcome.detail === '' ? '' : ` (${outcome.detail})`;
  return [`At ${timeInRecording(onsetS)}: ${NOTHING_FOUND[outcome.reason]}, no reading${detail}.`];
}

function outsideCompass({ midi, onsetS }: NoteReading, compass: Compass): string[] {
  if (isInCompass(compass, midi)) return [];
  return [`At ${timeInRecording(onsetS)}: ${midiToName(midi)} lies outside the compass ${compassToText(compass)}.`];
}

function onlyUnusable(readings: readonly NoteReading[]): string[] {
  const notes = [...new Set(readings.map(({ midi }) => midi))].sort((a, b) => a - b);
  return notes.flatMap((midi) => {
    const takes = readings.filter((reading) => reading.midi === midi);
    if (takes.some(({ quality }) => quality.isUsable)) return [];
    const faults = [...new Set(takes.flatMap(({ quality }) => quality.faults))].join(', ');
    const why = faults === '' ? '' : ` (${faults})`;
    return [`${midiToName(midi)} was heard only in takes that cannot be used${why}: play it again.`];
  });
}
