import { useMemo } from 'react';
import { formatSpreadCents } from '../../piano/format.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { forecastOfDrift } from '../../stability/forecastOfDrift.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { TimeFigure } from '../../ui/charts/TimeFigure.tsx';
import { DUE_LIMITS, type DueLimit } from '../../ui/dueLimit.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import { basisSentences, dueSentence, forecastChart, forecastSheet, seasonSentences } from './forecastChart.ts';

const words = texts.stability.forecast;

type Props = {
  readonly history: InstrumentHistory;
  readonly drift: Drift;
  readonly limit: DueLimit;
  readonly onLimit: (limit: DueLimit) => void;
};

/** What the instrument will do by itself, and when it is worth coming back. */
export function ForecastSection({ history, drift, limit, onLimit }: Props) {
  const limitCents = Number(limit);
  const outcome = useMemo(() => forecastOfDrift(drift, history, limitCents), [drift, history, limitCents]);
  if (!outcome.known)
    return (
      <Section title={words.title}>
        <EmptyState>
          <p>{words.none}</p>
        </EmptyState>
      </Section>
    );
  const { forecast } = outcome;
  const today = todayIso();
  return (
    <Section title={words.title} note={words.note}>
      <p>
        <strong>{dueSentence(forecast, today)}</strong>
      </p>
      <p>{seasonSentences(outcome, today).join(' ')}</p>
      <p>{basisSentences(outcome).join(' ')}</p>
      <SelectField
        id="due-limit"
        label={words.limit}
        hint={words.limitHint}
        value={limit}
        choices={DUE_LIMITS.map((value) => ({ value, label: words.limitLabel(formatSpreadCents(Number(value))) }))}
        onChange={onLimit}
      />
      <TimeFigure
        name={words.name}
        title={words.chartTitle}
        charts={[forecastChart(forecast, limitCents)]}
        sheet={() => forecastSheet(forecast)}
      />
    </Section>
  );
}
