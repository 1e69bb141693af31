import { useEffect, useState } from 'react';
import type { SurveyId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { NotFound } from '../../ui/NotFound.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { scopeText } from '../../ui/scopeText.ts';
import { texts } from '../../ui/texts.ts';
import { visitTrail } from '../../ui/trails.ts';
import type { Observed } from '../../ui/useObserved.ts';
import { readChangeBaseline } from './changeBaseline.ts';
import { RecordingDesk } from './RecordingDesk.tsx';
import type { StoredSurvey } from './storedSurvey.ts';
import { useSurveyLock } from './useSurveyLock.ts';

type Props = { readonly records: Records; readonly surveyId: SurveyId };

export function RecordingScreen({ records, surveyId }: Props) {
  const lock = useSurveyLock(surveyId);
  if (lock === 'asking') return <ReadState observed={{ state: 'loading' }} />;
  if (lock === 'waiting')
    return (
      <Notice kind="note" word={texts.common.otherPages.word} isUrgent>
        {texts.common.otherPages.surveyTaken}
      </Notice>
    );
  return <OpenSurvey records={records} surveyId={surveyId} />;
}

/** Reads the survey only once no other page writes into it. */
function OpenSurvey({ records, surveyId }: Props) {
  const stored = useStoredSurvey(records, surveyId);
  if (stored.state !== 'ready') return <ReadState observed={stored} />;
  if (!stored.value) return <NotFound />;
  const { survey, visit, instrument } = stored.value;
  return (
    <>
      <PageHeading
        isCompact
        title={texts.recording.title(
          texts.common.stage[survey.stage],
          [texts.common.strings[survey.strings], scopeText(survey.scope)].filter(Boolean).join('; '),
        )}
        trail={visitTrail(instrument, visit).slice(1)}
      />
      <RecordingDesk records={records} stored={stored.value} />
    </>
  );
}

/** Read once: from then on the screen itself knows what is in the records, for it alone writes to this survey. */
function useStoredSurvey(records: Records, surveyId: SurveyId): Observed<StoredSurvey | null> {
  const [stored, setStored] = useState<Observed<StoredSurvey | null>>({ state: 'loading' });
  useEffect(() => {
    readStoredSurvey(records, surveyId).then(
      (value) => setStored({ state: 'ready', value }),
      (fault: unknown) =>
        setStored({ state: 'failed', message: fault instanceof Error ? fault.message : String(fault) }),
    );
  }, [records, surveyId]);
  return stored;
}

async function readStoredSurvey(records: Records, surveyId: SurveyId): Promise<StoredSurvey | null> {
  const survey = await records.survey(surveyId);
  const visit = survey && (await records.visit(survey.visitId));
  const instrument = survey && (await records.instrument(survey.instrumentId));
  if (!survey || !visit || !instrument) return null;
  const takes = await records.takesOfSurvey(surveyId);
  return { survey, visit, instrument, takes, baseline: await readChangeBaseline(records, survey) };
}
