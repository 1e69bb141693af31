import type { DecisionId, InstrumentId, SurveyId, TakeId, VisitId } from '../../../src/piano/ids.ts';
import type { Survey, Take, Visit } from '../../../src/piano/instrument.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import type { StringDecision } from '../../../src/piano/stringingRecords.ts';
import { type StringTake, stringTakes } from '../../../src/screens/strings/stringReadings.ts';

const instrumentId = 'i' as InstrumentId;

export function visitOn(visitedOn: string): Visit {
  const climate = { humidityPct: null, temperatureC: null };
  return {
    id: `v ${visitedOn}` as VisitId,
    instrumentId,
    visitedOn,
    visitedBy: 'Ida',
    ...climate,
    pitchStandardHz: 442,
    remark: '',
  };
}

export function surveyAt(visit: Visit, change: Partial<Survey> = {}): Survey {
  return {
    id: `s ${visit.visitedOn}` as SurveyId,
    visitId: visit.id,
    instrumentId,
    stage: 'as-found',
    startedAt: `${visit.visitedOn}T09:00:00Z`,
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'single strings',
    ...change,
  };
}

/** Kept takes of one survey of single strings on that day. */
export function takesOn(visitedOn: string, readings: readonly NoteReading[], isKept = true): StringTake[] {
  const visit = visitOn(visitedOn);
  const survey = surveyAt(visit);
  const takes = readings.map((reading, index): Take => {
    const { midi, stringPosition } = reading;
    const id = `${visitedOn} ${midi}/${stringPosition} ${index}` as TakeId;
    const owner = { surveyId: survey.id, visitId: visit.id, instrumentId };
    return { id, ...owner, midi, stringPosition, recordedAt: `${visitedOn}T10:00:0${index}Z`, isKept, reading };
  });
  return stringTakes(takes, [survey], [visit]);
}

export function decisionOf(change: Partial<StringDecision> = {}): StringDecision {
  return {
    id: 'd' as DecisionId,
    instrumentId,
    midi: 60,
    stringPosition: 2,
    choice: 'bridge work',
    reason: '',
    decidedOn: '2024-03-01',
    doneOn: null,
    ...change,
  };
}
