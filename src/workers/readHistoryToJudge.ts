/** An instrument's history out of the records, as the workers that judge it want it. */
import type { InstrumentId, SurveyId } from '../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../piano/instrument.ts';
import { historyInSteps, type InstrumentHistory } from '../stability/historyOfRecords.ts';
import { type OwnThreshold, slipThresholdOf } from '../stability/slipThreshold.ts';
import { recordedTakes } from '../survey/recordedTakes.ts';
import type { HistoryToJudge } from './driftMessages.ts';

/** As much of the records as this needs. */
export type HistorySource = {
  visitsOf(id: InstrumentId): Promise<Visit[]>;
  surveysOfInstrument(id: InstrumentId): Promise<Survey[]>;
  eventsOf(id: InstrumentId): Promise<InstrumentEvent[]>;
  takesOfSurvey(id: SurveyId): Promise<Take[]>;
};

/** Survey by survey, so that an instrument of many years needs no more memory than its figures. */
export async function readHistoryToJudge(source: HistorySource, instrument: Instrument): Promise<HistoryToJudge> {
  const [visits, surveys, events] = await Promise.all([
    source.visitsOf(instrument.id),
    source.surveysOfInstrument(instrument.id),
    source.eventsOf(instrument.id),
  ]);
  const perSurvey: Take[][] = [];
  for (const survey of surveys) perSurvey.push([...recordedTakes(await source.takesOfSurvey(survey.id)).kept]);
  const steps = historyInSteps({ instrument, visits, surveys, takes: perSurvey.flat(), events });
  for (;;) {
    const step = steps.next();
    if (step.done) return historyToJudge(step.value, instrument);
    await nextTask();
  }
}

/** Lets what waits go first: this may run on a page's own thread. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/** @param of the instrument whose history it is, for the slip that matters there */
export function historyToJudge({ readings, events, instrument }: InstrumentHistory, of: OwnThreshold): HistoryToJudge {
  return { readings, events, instrument, thresholdCentsPerYear: slipThresholdOf(of) };
}
