import { useMemo, useState } from 'react';
import type { InstrumentId, SurveyId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PageParts } from '../../ui/PageParts.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { BEATING } from './audibility.ts';
import { BeatMap } from './BeatMap.tsx';
import { DecisionDesk } from './DecisionDesk.tsx';
import { type DeskRow, deskRows } from './deskRows.ts';
import { LivelySection, surveyName } from './LivelySection.tsx';
import {
  type BenchOfStrings,
  chosenTakes,
  type ReadingsChoice,
  readingsOf,
  type StringRecords,
  surveyChoices,
} from './stringReadings.ts';
import styles from './strings.module.css';
import { UnisonSection } from './UnisonSection.tsx';
import { useBenchOfStrings, useStringRecords } from './useStrings.ts';

const words = texts.strings;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

export function StringsScreen({ records, instrumentId }: Props) {
  const strings = useStringRecords(records, instrumentId);
  const bench = useBenchOfStrings(records, instrumentId);
  if (strings.state !== 'ready') return <ReadState observed={strings} />;
  if (!strings.value) return <NotFound />;
  if (bench.state !== 'ready') return <ReadState observed={bench} />;
  const { instrument } = strings.value;
  return (
    <>
      <PageHeading
        title={words.title}
        trail={instrumentTrail(instrument)}
        subtitle={words.subtitle}
        isInvented={instrument.isDemonstration}
        actions={<LinkButton href={routeToHref({ screen: 'work-list', instrumentId })}>{words.workList}</LinkButton>}
      />
      {strings.value.takes.length === 0 ? (
        <EmptyState
          actions={
            <LinkButton look="primary" href={routeToHref({ screen: 'new-visit', instrumentId })}>
              {texts.instrument.newVisit}
            </LinkButton>
          }
        >
          <p>{words.empty}</p>
        </EmptyState>
      ) : (
        <StringSections records={records} strings={strings.value} bench={bench.value} />
      )}
    </>
  );
}

type SectionsProps = {
  readonly records: Records;
  readonly strings: StringRecords;
  readonly bench: BenchOfStrings;
};

function StringSections({ records, strings, bench }: SectionsProps) {
  const { instrument, takes, failingPins } = strings;
  const [choice, setChoice] = useState<ReadingsChoice>('newest');
  const chosen = useMemo(() => chosenTakes(takes, choice), [takes, choice]);
  const readings = useMemo(() => readingsOf(chosen), [chosen]);
  const rows = useMemo(() => deskRows(chosen, takes, bench, failingPins), [chosen, takes, bench, failingPins]);
  const surveys = useMemo(() => surveyChoices(takes), [takes]);
  return (
    <PageParts>
      <Section title={words.desk.title} note={words.desk.note}>
        <SelectField
          id="strings-readings"
          label={words.readingsOf}
          value={choice as string}
          choices={[
            { value: 'newest', label: words.newest },
            ...surveys.map((one) => ({ value: one.survey.id as string, label: surveyName(one) })),
          ]}
          onChange={(value) => setChoice(value === 'newest' ? 'newest' : (value as SurveyId))}
        />
        <p className={styles.text}>{summaryOf(rows)}</p>
        <DecisionDesk records={records} instrumentId={instrument.id} rows={rows} />
      </Section>
      <Section title={words.map.title} note={words.map.note}>
        <BeatMap instrument={instrument} rows={rows} />
      </Section>
      <UnisonSection readings={readings} />
      <LivelySection instrument={instrument} takes={takes} />
    </PageParts>
  );
}

function summaryOf(rows: readonly DeskRow[]): string {
  const count = (test: (row: DeskRow) => boolean) => rows.filter(test).length;
  return words.desk.summary(
    count(({ audibility }) => BEATING.includes(audibility)),
    count(({ audibility }) => audibility === 'none'),
    count(({ audibility }) => audibility === 'undecided'),
  );
}
