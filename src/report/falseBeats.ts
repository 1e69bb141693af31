/** False beats before and after work, and now: strings that beat by themselves, of those whose recording can tell. */
import type { InstrumentEvent, Survey, Take, Visit } from '../piano/instrument.ts';
import type { StringPosition } from '../piano/reading.ts';
import type { StringDecision } from '../piano/stringingRecords.ts';

export type BeatCount = {
  /** The latest day of the readings counted. */
  readonly on: string;
  readonly withFalseBeat: number;
  readonly judged: number;
};

export type FalseBeats = {
  /** The strings that were worked on, before and after the latest such day; null where none was read on both sides. */
  readonly work: { readonly doneOn: string; readonly before: BeatCount; readonly after: BeatCount } | null;
  /** Each string's newest reading; null where no single string was ever read. */
  readonly latest: (BeatCount & { readonly notAssessable: number; readonly strings: readonly BeatingString[] }) | null;
};

export type BeatingString = { readonly midi: number; readonly stringPosition: StringPosition };

type BeatRecords = {
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  /** Kept takes. */
  readonly takes: readonly Take[];
  readonly events: readonly InstrumentEvent[];
  readonly decisions: readonly StringDecision[];
};

type BeatReading = BeatingString & {
  readonly on: string;
  readonly order: string;
  readonly kind: Take['reading']['beating']['kind'];
};

/** Work on the wire, after which a string may beat otherwise than before; work at the bridge stands among the decisions. */
const WIRE_WORK: readonly InstrumentEvent['kind'][] = ['restrung', 'string-replaced'];
const WIRE_DECISIONS: readonly StringDecision['choice'][] = ['bridge work', 'replace wire'];

/** Only strings that sounded alone or behind a felt strip count: in an open unison the strings beat with each other. */
export function falseBeatsOf(records: BeatRecords): FalseBeats {
  const readings = beatReadings(records);
  const compared = workDays(records).map((day) => beforeAndAfter(readings, day));
  return { work: compared.find((found) => found !== null) ?? null, latest: latestOf(readings) };
}

function beatReadings({ visits, surveys, takes }: BeatRecords): BeatReading[] {
  const surveyById = new Map(surveys.map((survey) => [survey.id, survey]));
  const dateByVisit = new Map(visits.map((visit) => [visit.id, visit.visitedOn]));
  const readings = takes.flatMap((take): BeatReading[] => {
    const survey = surveyById.get(take.surveyId);
    const on = survey && dateByVisit.get(survey.visitId);
    if (!survey || on === undefined || !take.isKept || !take.reading.quality.isUsable) return [];
    if (survey.strings === 'open unisons') return [];
    const stringPosition = take.stringPosition === 0 && survey.strings === 'centre strings' ? 2 : take.stringPosition;
    const { kind } = take.reading.beating;
    return [{ midi: take.midi, stringPosition, on, order: `${on} ${survey.startedAt} ${take.recordedAt}`, kind }];
  });
  return readings.sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0));
}

type WorkDay = { readonly doneOn: string; readonly touched: (string: BeatingString) => boolean };

/** The latest first. */
function workDays({ events, decisions }: BeatRecords): WorkDay[] {
  const work = events.filter(({ kind }) => WIRE_WORK.includes(kind));
  const done = decisions.filter(({ doneOn, choice }) => doneOn !== null && WIRE_DECISIONS.includes(choice));
  const days = new Set([...work.map(({ happenedOn }) => happenedOn), ...done.map(({ doneOn }) => doneOn ?? '')]);
  return [...days]
    .sort()
    .reverse()
    .map((doneOn) => ({
      doneOn,
      touched: ({ midi, stringPosition }) =>
        work.some((event) => event.happenedOn === doneOn && isCovered(midi, event)) ||
        done.some(
          (one) => one.doneOn === doneOn && one.midi === midi && isSameString(one.stringPosition, stringPosition),
        ),
    }));
}

function isCovered(midi: number, { fromMidi, toMidi }: InstrumentEvent): boolean {
  return midi >= (fromMidi ?? Number.NEGATIVE_INFINITY) && midi <= (toMidi ?? Number.POSITIVE_INFINITY);
}

/** Work on a whole unison is work on each of its strings. */
function isSameString(worked: StringPosition, read: StringPosition): boolean {
  return worked === 0 || worked === read;
}

/** Each string's last judged reading before the day and its first one after it. A reading of the day itself is left out: nobody knows on which side it lies. */
function beforeAndAfter(readings: readonly BeatReading[], { doneOn, touched }: WorkDay): FalseBeats['work'] {
  const judged = readings.filter((reading) => isJudged(reading) && touched(reading));
  const before = byString(judged.filter(({ on }) => on < doneOn));
  const after = byString(judged.filter(({ on }) => on > doneOn).reverse());
  const both = [...before.keys()].filter((key) => after.has(key));
  if (both.length === 0) return null;
  const counted = (side: ReadonlyMap<number, BeatReading>) => countOf(both.flatMap((key) => side.get(key) ?? []));
  return { doneOn, before: counted(before), after: counted(after) };
}

function latestOf(readings: readonly BeatReading[]): FalseBeats['latest'] {
  const newest = [...byString(readings).values()].sort(
    (a, b) => a.midi - b.midi || a.stringPosition - b.stringPosition,
  );
  if (newest.length === 0) return null;
  const judged = newest.filter(isJudged);
  const strings = judged.filter(({ kind }) => kind === 'false beat');
  const count = countOf(judged.length > 0 ? judged : newest);
  return {
    ...count,
    judged: judged.length,
    notAssessable: newest.length - judged.length,
    strings: strings.map(({ midi, stringPosition }) => ({ midi, stringPosition })),
  };
}

/** The later reading of a string counts. */
function byString(readings: readonly BeatReading[]): Map<number, BeatReading> {
  return new Map(readings.map((reading) => [reading.midi * 4 + reading.stringPosition, reading]));
}

function isJudged({ kind }: BeatReading): boolean {
  return kind === 'none' || kind === 'false beat';
}

/** @param readings at least one */
function countOf(readings: readonly BeatReading[]): BeatCount {
  const [on = ''] = readings
    .map((reading) => reading.on)
    .sort()
    .reverse();
  return { on, judged: readings.length, withFalseBeat: readings.filter(({ kind }) => kind === 'false beat').length };
}
