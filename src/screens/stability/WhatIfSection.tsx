import { useState } from 'react';
import { formatShare } from '../../piano/format.ts';
import { formatYearCount } from '../../piano/formatStability.ts';
import type { WhatIfSummary } from '../../stability/whatIf.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { ExportBar } from '../../ui/chartExport/ExportBar.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './stability.module.css';
import { TRIAL_COUNT, useWhatIf } from './useWhatIf.ts';
import {
  choice,
  countOf,
  FIRST_DRAFT,
  NOISES,
  NOTE_COUNTS,
  PIN_COUNTS,
  questionOf,
  RATES,
  summarySentences,
  VISITS,
  type WhatIfDraft,
} from './whatIfDraft.ts';

const words = texts.stability.whatIf;

/** What a fault would look like, and when it would be found: invented pianos, judged like real ones. */
export function WhatIfSection({ thresholdCentsPerYear }: { readonly thresholdCentsPerYear: number }) {
  const [draft, setDraft] = useState(FIRST_DRAFT);
  const [asked, setAsked] = useState(FIRST_DRAFT);
  const { isRunning, doneCount, summary, fault, start, stop } = useWhatIf();
  const begin = () => {
    setAsked(draft);
    start(questionOf(draft, thresholdCentsPerYear));
  };
  return (
    <Section title={words.title} note={words.note}>
      <WhatIfFields draft={draft} onChange={(change) => setDraft((before) => ({ ...before, ...change }))} />
      <div className={styles.running}>
        {isRunning ? (
          <>
            <progress className={styles.progress} max={TRIAL_COUNT} value={doneCount} aria-label={words.title} />
            <span role="status">{words.progress(doneCount, TRIAL_COUNT)}</span>
            <Button onPress={stop}>{words.stop}</Button>
          </>
        ) : (
          <Button look="primary" onPress={begin}>
            {words.start}
          </Button>
        )}
      </div>
      {fault && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(fault)}
        </Notice>
      )}
      {summary && <WhatIfResult summary={summary} fault={asked.fault} />}
    </Section>
  );
}

type FieldsProps = { readonly draft: WhatIfDraft; readonly onChange: (change: Partial<WhatIfDraft>) => void };

function WhatIfFields({ draft, onChange }: FieldsProps) {
  return (
    <>
      <ChoiceField
        name="what-if-fault"
        label={words.fault}
        value={draft.fault}
        choices={(['pins', 'zone', 'none'] as const).map((value) => ({ value, label: words.faults[value] }))}
        onChange={(fault) => onChange({ fault })}
      />
      <FieldRow>
        {draft.fault === 'pins' && (
          <SelectField
            id="what-if-pins"
            label={words.pinCount}
            value={draft.pinCount}
            choices={PIN_COUNTS.map(choice)}
            onChange={(pinCount) => onChange({ pinCount })}
          />
        )}
        {draft.fault === 'zone' && (
          <SelectField
            id="what-if-notes"
            label={words.noteCount}
            value={draft.noteCount}
            choices={NOTE_COUNTS.map(choice)}
            onChange={(noteCount) => onChange({ noteCount })}
          />
        )}
        {draft.fault !== 'none' && (
          <SelectField
            id="what-if-rate"
            label={words.rate}
            value={draft.rate}
            choices={RATES.map(choice)}
            onChange={(rate) => onChange({ rate })}
          />
        )}
        <SelectField
          id="what-if-visits"
          label={words.visits}
          value={draft.visits}
          choices={VISITS.map(choice)}
          onChange={(visits) => onChange({ visits })}
        />
        <SelectField
          id="what-if-noise"
          label={words.noise}
          value={draft.noise}
          choices={NOISES.map((value) => ({ value, label: words.noises[value] }))}
          onChange={(noise) => onChange({ noise })}
        />
        <SelectField
          id="what-if-humidity"
          label={words.humidity}
          value={draft.humidity}
          choices={(['noted', 'unnoted'] as const).map((value) => ({ value, label: words.humidities[value] }))}
          onChange={(humidity) => onChange({ humidity })}
        />
      </FieldRow>
    </>
  );
}

type ByYear = WhatIfSummary['byYear'][number];

function WhatIfResult({ summary, fault }: { readonly summary: WhatIfSummary; readonly fault: WhatIfDraft['fault'] }) {
  const { trialCount, byYear } = summary;
  return (
    <>
      <p>{summarySentences(summary, fault).join(' ')}</p>
      <DataTable
        caption={words.caption(trialCount)}
        columns={columnsOf(trialCount, fault)}
        rows={byYear}
        rowKey={(row) => String(row.years)}
        stacksWhenNarrow
      />
      <ExportBar
        name={words.name}
        sheet={() => ({
          columns: ['years', 'trials', 'found', 'named_share', 'warned', 'holding', 'sound_string_blamed'],
          rows: byYear.map((row) => [
            row.years,
            trialCount,
            row.foundShare * trialCount,
            row.namedShare,
            row.warnsShare * trialCount,
            row.holdsShare * trialCount,
            row.falseShare * trialCount,
          ]),
        })}
      />
    </>
  );
}

function columnsOf(trialCount: number, fault: WhatIfDraft['fault']): Column<ByYear>[] {
  const share = (key: keyof ByYear, title: string): Column<ByYear> => ({
    key,
    title,
    isNumber: true,
    cell: (row) => countOf(row[key], trialCount),
  });
  const years: Column<ByYear> = {
    key: 'years',
    title: words.years,
    isRowHeader: true,
    cell: (row) => formatYearCount(row.years),
  };
  const found = [
    share('foundShare', words.foundShare),
    {
      key: 'named',
      title: words.namedShare,
      isNumber: true,
      cell: (row: ByYear) => formatShare(row.namedShare),
    },
  ];
  const others = [
    share('warnsShare', words.warnsShare),
    share('holdsShare', words.holdsShare),
    share('falseShare', words.falseShare),
  ];
  return fault === 'none' ? [years, ...others] : [years, ...found, ...others];
}
