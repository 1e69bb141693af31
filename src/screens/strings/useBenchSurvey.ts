import { useState } from 'react';
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { todayIso } from '../../ui/today.ts';
import { type BenchPlan, benchPlan } from './benchSurvey.ts';
import type { StringPlace } from './stringKey.ts';
import type { StringRecords } from './stringReadings.ts';

export type BenchSurvey = {
  /** What a press of the button will make or use. */
  readonly plan: BenchPlan;
  /** Null until it is in the records. */
  readonly begun: BenchPlan | null;
  readonly fault: WriteFailure | null;
  readonly begin: () => Promise<void>;
};

/** Today's visit and its survey for recordings at the bridge; written only when the first recording is wanted. */
export function useBenchSurvey(records: Records, strings: StringRecords, { midi }: StringPlace): BenchSurvey {
  const [begun, setBegun] = useState<BenchPlan | null>(null);
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const plan = benchPlan({
    instrumentId: strings.instrument.id,
    visits: strings.visits,
    surveys: strings.surveys,
    midi,
    today: todayIso(),
    now: new Date().toISOString(),
    newVisitId: () => newId<VisitId>(),
    newSurveyId: () => newId<SurveyId>(),
  });
  const begin = async () => {
    if (plan.makesVisit) {
      const outcome = await records.saveVisit(plan.visit);
      if (!outcome.written) return setFault(outcome);
    }
    if (plan.makesSurvey || plan.addsNote) {
      const outcome = await records.saveSurvey(plan.survey);
      if (!outcome.written) return setFault(outcome);
    }
    setFault(null);
    setBegun(plan);
  };
  return { plan, begun, fault, begin };
}
