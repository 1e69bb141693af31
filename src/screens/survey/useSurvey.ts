import type { SurveyId } from '../../piano/ids.ts';
import type { Instrument, Survey, Take, Visit } from '../../piano/instrument.ts';
import { notesOfScope } from '../../piano/surveyScope.ts';
import type { Records } from '../../records/records.ts';
import type { SoundSizes } from '../../records/takeSounds.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import type { PooledRepeatability } from '../../survey/repeatability.ts';
import type { NoteCell } from '../../ui/noteState.ts';
import { surveyCells } from '../../ui/surveyCells.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type SurveyPage = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  readonly survey: Survey;
  /** From the lowest note up, strings from left to right, each with the reading that the record keeps. */
  readonly kept: readonly Take[];
  /** In the order recorded. */
  readonly setAside: readonly Take[];
  readonly cells: readonly NoteCell[];
  readonly sounds: SoundSizes;
  readonly pooledRepeatability: readonly PooledRepeatability[];
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
  const sounds = await records.soundSizes(surveyId);
  const { kept, pooledRepeatability } = recordedTakes([...takes].sort(byNote));
  const setAside = takes.filter((take) => !take.isKept);
  const cells = askedCells(instrument, survey, takes);
  return { instrument, visit, survey, kept, setAside, cells, sounds, pooledRepeatability };
}

/** What was asked for, and what was played besides. */
function askedCells({ compass }: Instrument, { scope }: Survey, takes: readonly Take[]): NoteCell[] {
  const asked = new Set([...notesOfScope(compass, scope), ...takes.map((take) => take.midi)]);
  return surveyCells(compass, takes).filter((cell) => asked.has(cell.midi));
}

function byNote(a: Take, b: Take): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
