import { useState } from 'react';
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import type { Instrument, Survey, Visit } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import { askForPersistence } from '../../records/storageStatus.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { chooseRecordings } from '../../ui/chosenRecordings.ts';
import { goTo } from '../../ui/routes.ts';
import { isSurveyOpen } from '../../ui/surveyLock.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { emptySurvey } from './emptySurvey.ts';
import type { SurveyChoice } from './surveyDraft.ts';

export type SurveyRow = { readonly survey: Survey; readonly keptNoteCount: number };
export type VisitPage = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  readonly surveys: readonly SurveyRow[];
  /** Of all sounds on this device. */
  readonly soundByteCount: number;
};

export type VisitView = {
  readonly page: Observed<VisitPage | null>;
  readonly writeFault: WriteFailure | null;
  /** From the microphone, or from recordings that were chosen. */
  readonly startSurvey: (choice: SurveyChoice, files?: readonly File[]) => Promise<void>;
};

export function useVisit(records: Records, visitId: VisitId): VisitView {
  const page = useObserved<VisitPage | null>(visitId, (onValue, onFault) =>
    records.observe(() => readVisitPage(records, visitId), onValue, onFault),
  );
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const startSurvey = async (choice: SurveyChoice, files?: readonly File[]) => {
    if (page.state !== 'ready' || !page.value) return;
    const surveys = page.value.surveys.map(({ survey }) => survey);
    const begun = await emptySurvey(surveys, choice.stage, { records, isOpen: isSurveyOpen });
    const survey: Survey = {
      id: begun ?? newId<SurveyId>(),
      visitId,
      instrumentId: page.value.instrument.id,
      startedAt: new Date().toISOString(),
      finishedAt: null,
      deviceLabel: '',
      sampleRateHz: null,
      ...choice,
    };
    const outcome = await records.saveSurvey(survey);
    if (!outcome.written) return setWriteFault(outcome);
    void askForPersistence(); // from the first survey on there is something to lose
    if (files) chooseRecordings(survey.id, files);
    goTo({ screen: 'recording', surveyId: survey.id });
  };
  return { page, writeFault, startSurvey };
}

async function readVisitPage(records: Records, visitId: VisitId): Promise<VisitPage | null> {
  const visit = await records.visit(visitId);
  const instrument = visit && (await records.instrument(visit.instrumentId));
  if (!visit || !instrument) return null;
  const surveys = await records.surveysOf(visitId);
  const rows = await Promise.all(
    surveys.map(async (survey) => {
      const takes = await records.takesOfSurvey(survey.id);
      const keptNoteCount = new Set(takes.filter((take) => take.isKept).map((take) => take.midi)).size;
      return { survey, keptNoteCount };
    }),
  );
  const { byteCount } = await records.soundSizes();
  return { instrument, visit, surveys: rows, soundByteCount: byteCount };
}
