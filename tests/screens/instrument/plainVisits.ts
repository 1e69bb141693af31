/** Three visits to one piano, with surveys of a few notes at an offset. */
import type { EventId, InstrumentId, SurveyId, TakeId, VisitId } from '../../../src/piano/ids.ts';
import type { EventKind, InstrumentEvent, Survey, SurveyStage, Take, Visit } from '../../../src/piano/instrument.ts';
import { readingAt } from '../plainReading.ts';

const instrumentId = 'i1' as InstrumentId;

export function visitOn(visitedOn: string): Visit {
  const id = visitedOn as VisitId;
  return {
    id,
    instrumentId,
    visitedOn,
    visitedBy: '',
    humidityPct: 40,
    temperatureC: 20,
    pitchStandardHz: 440,
    remark: '',
  };
}

/** A survey of A4 (and A3) at an offset, with its kept takes. */
export function surveyOf(visit: Visit, stage: SurveyStage, offsetsCents: Record<number, number>) {
  const survey: Survey = {
    id: `${visit.id} ${stage}` as SurveyId,
    visitId: visit.id,
    instrumentId,
    stage,
    startedAt: `${visit.visitedOn}T10:00:00Z`,
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'centre strings',
  };
  const takes = Object.entries(offsetsCents).map(
    ([midi, cents]): Take => ({
      id: `${survey.id} ${midi}` as TakeId,
      surveyId: survey.id,
      visitId: visit.id,
      instrumentId,
      midi: Number(midi),
      stringPosition: 2,
      recordedAt: survey.startedAt,
      isKept: true,
      reading: readingAt(Number(midi), cents),
    }),
  );
  return { survey, takes };
}

export function eventOn(happenedOn: string, kind: EventKind, midi: number | null = null): InstrumentEvent {
  return {
    id: `${happenedOn} ${kind}` as EventId,
    instrumentId,
    happenedOn,
    kind,
    fromMidi: midi,
    toMidi: midi,
    remark: '',
  };
}

export const spring = visitOn('2024-03-01');
export const autumn = visitOn('2024-09-01');
export const winter = visitOn('2025-01-15');
