import type { SurveyId } from '../../piano/ids.ts';
import type { Survey, SurveyStage } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';

type Lookup = {
  readonly records: Pick<Records, 'hasTakes'>;
  readonly isOpen: (surveyId: SurveyId) => Promise<boolean>;
};

/**
 * A survey of this stage that may be begun again, as something else perhaps, instead of being left behind empty: nothing was ever recorded
 * in it, takes set aside or deleted included, since those were recorded as the survey says; and no page has it open.
 */
export async function emptySurvey(
  surveys: readonly Survey[],
  stage: SurveyStage,
  { records, isOpen }: Lookup,
): Promise<SurveyId | null> {
  for (const survey of surveys)
    if (survey.stage === stage && !(await records.hasTakes(survey.id)) && !(await isOpen(survey.id))) return survey.id;
  return null;
}
