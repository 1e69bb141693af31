import type { SurveyId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';

type Props = { readonly records: Records; readonly surveyId: SurveyId };
export function RecordingScreen({ surveyId }: Props) {
  return <p>{surveyId}</p>;
}
