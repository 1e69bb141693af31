/**
 * A morning at the bridge of the invented piano: left and right strings of a few notes recorded alone, trials on some of them, what was decided,
 * and the same strings recorded again years later, after some of the work was done.
 */
import { hzToCents } from '../../piano/cents.ts';
import type { SurveyId } from '../../piano/ids.ts';
import type { Survey, Take, Visit } from '../../piano/instrument.ts';
import type { Beat } from '../../piano/reading.ts';
import type { BridgeTrial, StringDecision, TrialKind } from '../../piano/stringingRecords.ts';
import type { RecordSet } from '../recordSet.ts';
import type { BenchMorning, BenchString } from './benchMorning.ts';
import { inventedReading } from './inventedReading.ts';
import type { InventedString } from './inventedString.ts';
import type { SeededNumbers } from './seededNumbers.ts';

type Visited = Pick<RecordSet, 'visits' | 'surveys' | 'takes'>;
type Bench = Required<Pick<RecordSet, 'decisions' | 'trials'>> & Pick<RecordSet, 'surveys' | 'takes'>;

const MS_PER_MINUTE = 60_000;
/** After the as-left survey. */
const BEGINS_AT = '14:10';
const TAKES_A_SIDE = 2;

export function inventTrials(morning: BenchMorning, visited: Visited, numbers: SeededNumbers): Bench {
  const [first, again] = [morning.visitIndex, morning.againIndex].map((index) => visited.visits.at(index));
  if (!first || !again) throw new RangeError('visitIndex and againIndex must name visits');
  const firstDay = benchDay(first, visited, morning, numbers);
  const againDay = benchDay(again, visited, morning, numbers);
  const takes: Take[] = [];
  const trials: BridgeTrial[] = [];
  const decisions: StringDecision[] = [];
  for (const string of morning.strings) {
    const before = Array.from({ length: TAKES_A_SIDE }, (_, index) => firstDay.take(string, 1, index === 0));
    takes.push(...before);
    for (const { kind, depthShare } of string.trials) {
      const after = Array.from({ length: TAKES_A_SIDE }, () => firstDay.take(string, depthShare, false));
      takes.push(...after);
      trials.push(firstDay.trial(string, kind, before, after));
    }
    if (string.decision) decisions.push(inventedDecision(string, string.decision, first, numbers));
    takes.push(againDay.take(string, string.decision?.isDone ? string.decision.depthShare : 1, true));
  }
  return { surveys: [firstDay.survey, againDay.survey], takes, trials, decisions };
}

function benchDay(visit: Visit, visited: Visited, { strings }: BenchMorning, numbers: SeededNumbers) {
  const survey = benchSurvey(visit, strings, numbers.id<SurveyId>());
  const asLeft = visited.surveys.find(({ visitId, stage }) => visitId === visit.id && stage === 'as-left');
  let atMs = Date.parse(survey.startedAt);
  const take = (string: BenchString, depthShare: number, isKept: boolean): Take => {
    atMs += MS_PER_MINUTE / 4;
    const centre = visited.takes.find(({ surveyId, midi }) => surveyId === asLeft?.id && midi === string.midi);
    if (!centre) throw new RangeError(`no centre string was recorded of note ${string.midi}`);
    const owner = { surveyId: survey.id, visitId: visit.id, instrumentId: visit.instrumentId };
    const { midi, stringPosition } = string;
    const reading = { ...readingOf(string, centre, depthShare, numbers), stringPosition };
    return {
      id: numbers.id(),
      ...owner,
      midi,
      stringPosition,
      recordedAt: new Date(atMs).toISOString(),
      isKept,
      reading,
    };
  };
  const trial = (
    string: BenchString,
    kind: TrialKind,
    before: readonly Take[],
    after: readonly Take[],
  ): BridgeTrial => ({
    id: numbers.id(),
    instrumentId: visit.instrumentId,
    visitId: visit.id,
    surveyId: survey.id,
    midi: string.midi,
    stringPosition: string.stringPosition,
    kind,
    triedAt: after.at(-1)?.recordedAt ?? survey.startedAt,
    takesBefore: before.map(({ id }) => id),
    takesAfter: after.map(({ id }) => id),
    remark: '',
  });
  return { survey, take, trial };
}

function benchSurvey(visit: Visit, strings: readonly BenchString[], id: SurveyId): Survey {
  const startMs = Date.parse(`${visit.visitedOn}T${BEGINS_AT}:00Z`);
  return {
    id,
    visitId: visit.id,
    instrumentId: visit.instrumentId,
    stage: 'as-left',
    startedAt: new Date(startMs).toISOString(),
    finishedAt: new Date(startMs + 40 * MS_PER_MINUTE).toISOString(),
    deviceLabel: 'Invented microphone',
    sampleRateHz: 48_000,
    strings: 'single strings',
    scope: { kind: 'chosen', notesMidi: [...new Set(strings.map(({ midi }) => midi))].sort((a, b) => a - b) },
  };
}

/** A string beside the note's centre string, as that one was left. */
function readingOf(string: BenchString, { reading: centre }: Take, depthShare: number, numbers: SeededNumbers) {
  const { f0Hz, inharmonicityB } = centre;
  if (f0Hz === null || inharmonicityB === null) throw new RangeError(`note ${string.midi} has no measured stiffness`);
  const partial1Hz = centre.partial1Hz * 2 ** (string.offsetCents / 1200);
  const invented: InventedString = {
    midi: string.midi,
    stiffnessHz2: inharmonicityB * f0Hz ** 2 * (string.stiffnessShare ?? 1),
    targetHz: partial1Hz,
    falseBeat: struckBeat(string, depthShare, numbers),
  };
  const { onsetS, pitchStandardHz } = centre;
  const reading = inventedReading(invented, { partial1Hz, onsetS, pitchStandardHz }, numbers);
  const equalHz = centre.partial1Hz / 2 ** (centre.offsetCents / 1200);
  return { ...reading, offsetCents: hzToCents(reading.partial1Hz, equalHz) };
}

/** No strike is quite like another: a few per cent in depth, a little in rate. Chosen. */
const DEPTH_SCATTER = 0.05;
const RATE_SCATTER = 0.01;
/** Shallower than this and it is not found any more. */
const LEAST_DEPTH_DB = 1.5;

function struckBeat({ beat }: BenchString, depthShare: number, numbers: SeededNumbers): InventedString['falseBeat'] {
  if (!beat) return null;
  const depthDb = beat.depthDb * depthShare * (1 + numbers.normal(DEPTH_SCATTER));
  const rateHz = beat.rateHz * (1 + numbers.normal(RATE_SCATTER));
  if (depthDb < LEAST_DEPTH_DB) return null;
  const struck: Beat = { rateHz, rateStandardUncertaintyHz: 0.02 * rateHz, depthDb };
  return { beat: struck, partialNumbers: beat.partialNumbers };
}

const DAYS_TO_WORK = 3;

function inventedDecision(
  { midi, stringPosition }: BenchString,
  { choice, reason, isDone }: NonNullable<BenchString['decision']>,
  visit: Visit,
  numbers: SeededNumbers,
): StringDecision {
  const doneOn = new Date(Date.parse(visit.visitedOn) + DAYS_TO_WORK * 86_400_000).toISOString().slice(0, 10);
  return {
    id: numbers.id(),
    instrumentId: visit.instrumentId,
    midi,
    stringPosition,
    choice,
    reason,
    decidedOn: visit.visitedOn,
    doneOn: isDone ? doneOn : null,
  };
}
