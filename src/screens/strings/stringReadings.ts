/** What the records hold of single strings: takes with their survey and visit, and the newest or a survey's own of each. */
import type { SurveyId, TakeId } from '../../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { BridgeTrial, StringDecision } from '../../piano/stringingRecords.ts';
import { fromTheLowest, isSameString, keyOf, type StringPlace } from './stringKey.ts';

export type StringTake = { readonly take: Take; readonly survey: Survey; readonly visit: Visit };

export type StringRecords = {
  readonly instrument: Instrument;
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  readonly events: readonly InstrumentEvent[];
  /** Kept takes of strings by themselves, and all takes of surveys of single strings; oldest first. */
  readonly takes: readonly StringTake[];
  /** Takes whose sound was kept. */
  readonly withSound: ReadonlySet<TakeId>;
  /** Keys of strings whose pin turns at less than the string pulls. */
  readonly failingPins: ReadonlySet<string>;
};

/** What is decided and tried; it changes while the desk is open. */
export type BenchOfStrings = {
  /** By date, the oldest first. */
  readonly decisions: readonly StringDecision[];
  readonly trials: readonly BridgeTrial[];
};

/** Open unisons tell nothing of single strings and are left out. */
export function stringTakes(
  takes: readonly Take[],
  surveys: readonly Survey[],
  visits: readonly Visit[],
): StringTake[] {
  const surveyById = new Map(surveys.map((survey) => [survey.id, survey]));
  const visitById = new Map(visits.map((visit) => [visit.id, visit]));
  const known = takes.flatMap((take): StringTake[] => {
    const survey = surveyById.get(take.surveyId);
    const visit = survey && visitById.get(survey.visitId);
    if (!survey || !visit || take.stringPosition === 0 || survey.strings === 'open unisons') return [];
    return [{ take, survey, visit }];
  });
  return known.sort((a, b) => (orderOf(a) < orderOf(b) ? -1 : 1));
}

function orderOf({ take, survey, visit }: StringTake): string {
  return `${visit.visitedOn} ${survey.startedAt} ${take.recordedAt}`;
}

export type ReadingsChoice = 'newest' | SurveyId;

/** The kept reading of each string, from the lowest string up: of one survey, or the newest of all. */
export function chosenTakes(takes: readonly StringTake[], choice: ReadingsChoice): StringTake[] {
  const byString = new Map<string, StringTake>();
  for (const own of takes)
    if (own.take.isKept && (choice === 'newest' || own.survey.id === choice)) byString.set(keyOf(own.take), own);
  return [...byString.values()].sort((a, b) => fromTheLowest(a.take, b.take));
}

export type SurveyChoice = { readonly survey: Survey; readonly visit: Visit; readonly count: number };

/** Surveys with kept takes of single strings, the newest first. */
export function surveyChoices(takes: readonly StringTake[]): SurveyChoice[] {
  const found = new Map<SurveyId, SurveyChoice>();
  for (const { take, survey, visit } of takes)
    if (take.isKept) found.set(survey.id, { survey, visit, count: (found.get(survey.id)?.count ?? 0) + 1 });
  return [...found.values()].reverse();
}

export function readingsOf(takes: readonly StringTake[]): NoteReading[] {
  return takes.map(({ take }) => take.reading);
}

export function takesOfString(takes: readonly StringTake[], place: StringPlace): StringTake[] {
  return takes.filter(({ take }) => isSameString(take, place));
}
