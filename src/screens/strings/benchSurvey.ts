/** Where recordings at the bridge go: today's visit and a survey of single strings in it, begun where they are missing. */
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import type { Survey, Visit } from '../../piano/instrument.ts';
import { isSameString, type StringPlace } from './stringKey.ts';
import type { StringTake } from './stringReadings.ts';

export type BenchPlan = {
  readonly visit: Visit;
  readonly survey: Survey;
  readonly makesVisit: boolean;
  readonly makesSurvey: boolean;
  /** The survey is there and does not ask for this note yet. */
  readonly addsNote: boolean;
};

type BenchSituation = {
  readonly instrumentId: Visit['instrumentId'];
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  readonly midi: number;
  /** Calendar date. */
  readonly today: string;
  /** ISO 8601 date and time. */
  readonly now: string;
  readonly newVisitId: () => VisitId;
  readonly newSurveyId: () => SurveyId;
};

/** A new visit takes over who came and the pitch standard from the last one. Strings are as left where the visit has an as-left survey. */
export function benchPlan(situation: BenchSituation): BenchPlan {
  const { visits, surveys, midi, today } = situation;
  const found = visits.findLast(({ visitedOn }) => visitedOn === today);
  const visit = found ?? newVisit(situation);
  const ofVisit = surveys.filter(({ visitId }) => visitId === visit.id);
  const bench = ofVisit.findLast(isBench);
  if (!bench) {
    const stage = ofVisit.some((survey) => survey.stage === 'as-left') ? 'as-left' : 'as-found';
    return {
      visit,
      survey: newSurvey(situation, visit, stage),
      makesVisit: !found,
      makesSurvey: true,
      addsNote: false,
    };
  }
  const asked = bench.scope?.kind === 'chosen' ? bench.scope.notesMidi : [];
  const addsNote = !asked.includes(midi);
  const notesMidi = addsNote ? [...asked, midi].sort((a, b) => a - b) : asked;
  const survey: Survey = { ...bench, scope: { kind: 'chosen', notesMidi } };
  return { visit, survey, makesVisit: false, makesSurvey: false, addsNote };
}

function isBench({ strings, scope }: Survey): boolean {
  return strings === 'single strings' && scope?.kind === 'chosen';
}

/** Common practice where no visit says otherwise. */
const USUAL_PITCH_HZ = 440;

function newVisit({ visits, instrumentId, today, newVisitId }: BenchSituation): Visit {
  const last = visits.at(-1);
  return {
    id: newVisitId(),
    instrumentId,
    visitedOn: today,
    visitedBy: last?.visitedBy ?? '',
    humidityPct: null,
    temperatureC: null,
    pitchStandardHz: last?.pitchStandardHz ?? USUAL_PITCH_HZ,
    remark: '',
  };
}

function newSurvey(
  { instrumentId, midi, now, newSurveyId }: BenchSituation,
  visit: Visit,
  stage: Survey['stage'],
): Survey {
  return {
    id: newSurveyId(),
    visitId: visit.id,
    instrumentId,
    stage,
    startedAt: now,
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'single strings',
    scope: { kind: 'chosen', notesMidi: [midi] },
  };
}

/**
 * Whether a string's first recording at the bridge may count among the visit's readings: only as it was found, before anything was done,
 * and where the visit has no reading of it yet. What follows was recorded after something was done to the string, and would be taken
 * for its pitch over the years.
 */
export function mayBeKept(
  takes: readonly StringTake[],
  visitId: VisitId,
  place: StringPlace,
  isFirst: boolean,
): boolean {
  const isRead = takes.some(({ take, visit }) => visit.id === visitId && take.isKept && isSameString(take, place));
  return isFirst && !isRead;
}
