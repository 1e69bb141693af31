/** From an instrument's visits, surveys and kept takes to what its page shows of each visit. */
import type { SurveyId, VisitId } from '../../piano/ids.ts';
import type { Survey, SurveyStage, Take, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';

export type StageFigures = {
  /** The stage's latest survey: where its count leads to. */
  readonly surveyId: SurveyId;
  readonly noteCount: number;
  readonly readings: readonly NoteReading[];
};

export type VisitFigures = {
  readonly visit: Visit;
  readonly asFound: StageFigures | null;
  readonly asLeft: StageFigures | null;
};

/** Visits in the order given (oldest first), each with what its surveys hold. A survey without a kept take counts as empty. */
export function visitFigures(
  visits: readonly Visit[],
  surveys: readonly Survey[],
  keptTakes: readonly Take[],
): VisitFigures[] {
  return visits.map((visit) => ({
    visit,
    asFound: stageFigures(visit.id, 'as-found', surveys, keptTakes),
    asLeft: stageFigures(visit.id, 'as-left', surveys, keptTakes),
  }));
}

function stageFigures(
  visitId: VisitId,
  stage: SurveyStage,
  surveys: readonly Survey[],
  keptTakes: readonly Take[],
): StageFigures | null {
  const own = surveys.filter((survey) => survey.visitId === visitId && survey.stage === stage);
  const latest = own.at(-1);
  if (!latest) return null;
  const ids = new Set(own.map((survey) => survey.id));
  const readings = keptTakes.filter((take) => ids.has(take.surveyId)).map((take) => take.reading);
  return { surveyId: latest.id, readings, noteCount: new Set(readings.map((reading) => reading.midi)).size };
}
