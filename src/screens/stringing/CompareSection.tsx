import { useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import type { WireGrade } from '../../piano/wireGrade.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { ComparisonView } from './ComparisonView.tsx';
import { scaleAt } from './scaleAt.ts';
import styles from './stringing.module.css';

const words = texts.stringing.compare;

type Props = {
  readonly instrument: Instrument;
  readonly grades: readonly WireGrade[];
  /** As it is first. */
  readonly schedules: readonly StringingSchedule[];
  /** The one on the desk. */
  readonly schedule: StringingSchedule;
};

export function CompareSection({ instrument, grades, schedules, schedule }: Props) {
  const [beforeId, setBefore] = useState<string | null>(null);
  const [plannedId, setPlanned] = useState<string | null>(null);
  const before = schedules.find(({ id }) => id === beforeId) ?? schedules[0];
  const others = schedules.filter(({ id }) => id !== before?.id);
  const planned = others.find(({ id }) => id === plannedId) ?? others.find(({ id }) => id === schedule.id) ?? others[0];
  if (!before || !planned)
    return (
      <Section title={words.title} note={words.note}>
        <EmptyState>
          <p>{words.none}</p>
        </EmptyState>
      </Section>
    );
  const strung = (one: StringingSchedule) => ({
    name: one.name,
    rows: one.rows,
    scale: scaleAt(one.rows, instrument, grades, one.pitchStandardHz),
  });
  return (
    <Section title={words.title} note={words.note}>
      <div className={styles.row}>
        <SelectField
          id="compare-before"
          label={words.before}
          value={before.id}
          choices={choicesOf(schedules)}
          onChange={setBefore}
        />
        <SelectField
          id="compare-planned"
          label={words.planned}
          value={planned.id}
          choices={choicesOf(others)}
          onChange={setPlanned}
        />
      </div>
      <ComparisonView id="compare" instrument={instrument} before={strung(before)} planned={strung(planned)} />
    </Section>
  );
}

function choicesOf(schedules: readonly StringingSchedule[]): { readonly value: string; readonly label: string }[] {
  return schedules.map(({ id, name }) => ({ value: id, label: name }));
}
