import { useState } from 'react';
import { formatDate, formatHumidity, formatNoteRange } from '../../piano/format.ts';
import type { InstrumentEvent } from '../../piano/instrument.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { lifeLine } from '../../stability/lifeLine.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { TimeFigure } from '../../ui/charts/TimeFigure.tsx';
import { timeScale } from '../../ui/charts/timeScale.ts';
import { TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { humidityChart, lifeLineSheet, pitchChart, workMarks } from './lifeLineChart.ts';
import { readHumidity } from './readHumidity.ts';
import styles from './stability.module.css';

const words = texts.stability.lifeLine;

type Props = {
  readonly history: InstrumentHistory;
  readonly drift: Drift;
  readonly events: readonly InstrumentEvent[];
};

type Shown = 'read' | 'corrected';

/** The instrument through the years: pitch as found and as left, humidity, work done. */
export function LifeLineSection({ history, drift, events }: Props) {
  const [shown, setShown] = useState<Shown>('read');
  const [humidity, setHumidity] = useState('45');
  const atPct = readHumidity(humidity);
  const isCorrected = shown === 'corrected' && atPct !== null && drift.detail.isHumidityKnown;
  const visits = lifeLine(history.readings, drift.detail, isCorrected ? atPct : null);
  const time = timeScale(
    visits.map((visit) => visit.visitedOn),
    7,
  );
  const charts = [pitchChart(visits, time, workMarks(events, time)), humidityChart(visits, time)];
  return (
    <Section title={words.title} note={words.note}>
      <FieldRow>
        <ChoiceField
          name="life-line-shows"
          label={words.show}
          value={shown}
          choices={[
            { value: 'read', label: words.choices.read },
            { value: 'corrected', label: words.choices.corrected },
          ]}
          onChange={setShown}
        />
        {shown === 'corrected' && (
          <TextField
            id="life-line-humidity"
            label={words.humidityField}
            unit="% RH"
            isNumber
            value={humidity}
            error={atPct === null ? words.humidityFault : undefined}
            onChange={setHumidity}
          />
        )}
      </FieldRow>
      {shown === 'corrected' && !drift.detail.isHumidityKnown && <p>{words.humidityUnknown}</p>}
      <TimeFigure
        name={words.name}
        title={isCorrected ? words.chartTitleAt(formatHumidity(atPct)) : words.chartTitle}
        charts={charts.filter((chart) => chart !== null)}
        sheet={() => lifeLineSheet(visits)}
      />
      <WorkList events={events} />
    </Section>
  );
}

/** The numbers are those of the lines in the chart; what lies before its first year is only here. */
function WorkList({ events }: { readonly events: readonly InstrumentEvent[] }) {
  if (events.length === 0) return null;
  const inOrder = [...events].sort((a, b) => (a.happenedOn < b.happenedOn ? -1 : 1));
  return (
    <div>
      <h3>{words.workTitle}</h3>
      <ol className={styles.work}>
        {inOrder.map(({ id, happenedOn, kind, fromMidi, toMidi }) => (
          <li key={id}>
            {formatDate(happenedOn)}: {texts.instrument.events.kinds[kind]}
            {fromMidi !== null && toMidi !== null && `, ${formatNoteRange(fromMidi, toMidi)}`}
          </li>
        ))}
      </ol>
    </div>
  );
}
