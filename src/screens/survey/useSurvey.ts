import type { SurveyId } from '../../piano/ids.ts';
import type { Instrument, Survey, Take, Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import type { NoteCell } from '../../ui/noteState.ts';
import { surveyCells } from '../../ui/surveyCells.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type SurveyPage = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  readonly survey: Survey;
  /** From the lowest note up, strings from left to right. */
  readonly kept: readonly Take[];
  /** In the order recorded. */
  readonly setAside: readonly Take[];
  readonly cells: readonly NoteCell[];
};

export function useSurvey(records: Records, surveyId: SurveyId): Observed<SurveyPage | null> {
  return useObserved<SurveyPage | null>(surveyId, (onValue, onFault) =>
    records.observe(() => readSurveyPage(records, surveyId), onValue, onFault),
  );
}

async function readSurveyPage(records: Records, surveyId: SurveyId): Promise<SurveyPage | null> {
  const survey = await records.survey(surveyId);
  const visit = survey && (await records.visit(survey.visitId));
  const instrument = survey && (await records.instrument(survey.instrumentId));
  if (!survey || !visit || !instrument) return null;
  const takes = await records.takesOfSurvey(surveyId);
  const kept = takes.filter((take) => take.isKept).sort(byNote);
  const setAside = takes.filter((take) => !take.isKept);
  return { instrument, visit, survey, kept, setAside, cells: surveyCells(instrument.compass, takes) };
}

function byNote(a: Take, b: Take): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
