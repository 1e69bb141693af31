import { useState } from 'react';
import type { InstrumentId, ScheduleId, SurveyId } from '../../piano/ids.ts';
import type { Instrument, Survey, Visit } from '../../piano/instrument.ts';
import type { OwnWireGrade, StringingSchedule } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

/** A survey whose takes are of single strings, with the visit it belongs to. */
export type StringSurvey = { readonly survey: Survey; readonly visit: Visit };

export type StringingPage = {
  readonly instrument: Instrument;
  /** As it is first, then the plans by name. */
  readonly schedules: readonly StringingSchedule[];
  readonly ownGrades: readonly OwnWireGrade[];
  /** The latest first. */
  readonly surveys: readonly StringSurvey[];
};

export type StringingView = {
  readonly page: Observed<StringingPage | null>;
  readonly shown: StringingSchedule | null;
  readonly choose: (id: ScheduleId | null) => void;
};

export function useStringing(records: Records, instrumentId: InstrumentId): StringingView {
  const page = useObserved<StringingPage | null>(instrumentId, (onValue, onFault) =>
    records.observe(() => readPage(records, instrumentId), onValue, onFault),
  );
  const [chosenId, choose] = useState<ScheduleId | null>(null);
  const schedules = page.state === 'ready' && page.value ? page.value.schedules : [];
  return { page, shown: schedules.find(({ id }) => id === chosenId) ?? schedules[0] ?? null, choose };
}

async function readPage(records: Records, instrumentId: InstrumentId): Promise<StringingPage | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [schedules, ownGrades, surveys, visits] = await Promise.all([
    records.schedulesOf(instrumentId),
    records.listWireGrades(),
    records.surveysOfInstrument(instrumentId),
    records.visitsOf(instrumentId),
  ]);
  return { instrument, schedules: inOrder(schedules), ownGrades, surveys: stringSurveys(surveys, visits) };
}

function inOrder(schedules: readonly StringingSchedule[]): StringingSchedule[] {
  return [
    ...schedules.filter(({ kind }) => kind === 'as it is'),
    ...schedules.filter(({ kind }) => kind === 'planned'),
  ];
}

/** Open unisons sound with several strings at once: their inharmonicity is no one wire's. */
function stringSurveys(surveys: readonly Survey[], visits: readonly Visit[]): StringSurvey[] {
  const byId = new Map<SurveyId, StringSurvey>();
  for (const survey of surveys) {
    const visit = visits.find(({ id }) => id === survey.visitId);
    if (visit && survey.strings !== 'open unisons') byId.set(survey.id, { survey, visit });
  }
  return [...byId.values()].sort((a, b) => (a.survey.startedAt < b.survey.startedAt ? 1 : -1));
}
