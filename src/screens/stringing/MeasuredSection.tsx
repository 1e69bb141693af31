import { useMemo, useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { Instrument, Take } from '../../piano/instrument.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import type { Records } from '../../records/records.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { MeasuredAgainst } from './MeasuredAgainst.tsx';
import { measuredStrings } from './measuredB.ts';
import type { StringSurvey } from './useStringing.ts';

const words = texts.stringing.measured;

type Props = {
  readonly records: Records;
  readonly instrument: Instrument;
  readonly schedule: StringingSchedule;
  readonly grades: readonly WireGrade[];
  readonly surveys: readonly StringSurvey[];
  readonly onRows: (rows: readonly ScheduleRow[]) => void;
};

/** The inharmonicity that was heard, against the one that lengths and wires lead one to expect. */
export function MeasuredSection({ surveys, ...shared }: Props) {
  const [chosenId, choose] = useState<string | null>(null);
  const chosen = surveys.find(({ survey }) => survey.id === chosenId) ?? surveys[0];
  return (
    <Section title={words.title} note={words.note}>
      {chosen ? (
        <>
          <SelectField
            id="measured-survey"
            label={words.survey}
            value={chosen.survey.id}
            choices={surveys.map((one) => ({ value: one.survey.id as string, label: labelOf(one) }))}
            onChange={choose}
          />
          <OfSurvey key={chosen.survey.id} {...shared} chosen={chosen} />
        </>
      ) : (
        <EmptyState>
          <p>{words.none}</p>
        </EmptyState>
      )}
    </Section>
  );
}

function labelOf({ survey, visit }: StringSurvey): string {
  const stage = texts.common.stage[survey.stage];
  return words.surveyChoice(formatDate(visit.visitedOn), stage, texts.common.strings[survey.strings]);
}

type OfSurveyProps = Omit<Props, 'surveys'> & { readonly chosen: StringSurvey };

function OfSurvey({ records, chosen: { survey, visit }, ...shared }: OfSurveyProps) {
  const takes = useObserved<Take[]>(survey.id, (onValue, onFault) =>
    records.observe(() => records.takesOfSurvey(survey.id), onValue, onFault),
  );
  const kept = takes.state === 'ready' ? takes.value : null;
  const measured = useMemo(() => measuredStrings(kept ? recordedTakes(kept).kept : []), [kept]);
  if (takes.state !== 'ready') return <ReadState observed={takes} />;
  return <MeasuredAgainst {...shared} measured={measured} pitchStandardHz={visit.pitchStandardHz} />;
}
