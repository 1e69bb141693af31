import { useState } from 'react';
import { noteCount } from '../../piano/compass.ts';
import { formatDate, formatHumidity, formatNoteRange, formatNumber } from '../../piano/format.ts';
import { formatTorque, formatTorqueInBoth } from '../../piano/formatTorque.ts';
import { type SectionTorque, type TorqueFigures, torqueSummary } from '../../stability/torqueSummary.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { roundScale } from '../../ui/chartScale.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { texts } from '../../ui/texts.ts';
import { LoadNote } from './LoadNote.tsx';
import { PinTable } from './PinTable.tsx';
import type { PinAddress } from './pinRound.ts';
import styles from './torque.module.css';
import { type Drawn, torqueBandsOf, torqueSeries } from './torqueChart.ts';
import type { InstrumentTorquePage, VisitPins } from './useInstrumentTorque.ts';

const words = texts.torque.over;
const DRAWN: readonly Drawn[] = ['torque', 'ratio'];
const DRAWN_CHOICES = DRAWN.map((value) => ({ value, label: words.drawnChoices[value] }));

type Props = {
  readonly page: InstrumentTorquePage;
  readonly shown: VisitPins;
  readonly before: VisitPins | null;
  readonly slipping: readonly PinAddress[];
  readonly onShow: (visitId: string) => void;
};

export function OverBlock({ page, shown, before, slipping, onShow }: Props) {
  const [drawn, setDrawn] = useState<Drawn>('torque');
  const { instrument, loads, read } = page;
  const summary = torqueSummary(shown.pins, instrument);
  const hasLoad = shown.pins.some(({ midi }) => loads.of(midi).known);
  return (
    <>
      <div className={styles.settings}>
        <SelectField
          id="torque-visit"
          label={words.visit}
          value={shown.visit.id}
          choices={[...read].reverse().map((one) => ({ value: one.visit.id, label: labelOf(one) }))}
          onChange={onShow}
        />
        {hasLoad && (
          <ChoiceField
            name="torque-drawn"
            label={words.drawn}
            value={drawn}
            choices={DRAWN_CHOICES}
            onChange={setDrawn}
          />
        )}
      </div>
      {summary.whole && <Facts figures={summary.whole} shown={shown} noteCount={noteCount(instrument.compass)} />}
      <Chart page={page} shown={shown} before={before} slipping={slipping} drawn={hasLoad ? drawn : 'torque'} />
      <p className={styles.text}>{words.practice}</p>
      <LoadNote loads={loads} midis={shown.pins.map(({ midi }) => midi)} />
      {summary.sections.length > 0 && (
        <DataTable
          caption={words.sections.caption}
          columns={SECTION_COLUMNS}
          rows={summary.sections}
          rowKey={({ fromMidi }) => String(fromMidi)}
          stacksWhenNarrow
        />
      )}
      <PinTable pins={shown.pins} loads={loads} />
    </>
  );
}

type ChartProps = Pick<Props, 'page' | 'shown' | 'before' | 'slipping'> & { readonly drawn: Drawn };

function Chart({ page: { instrument, loads }, shown, before, slipping, drawn }: ChartProps) {
  const earlier = before && { name: words.before(formatDate(before.visit.visitedOn)), pins: before.pins };
  const series = torqueSeries({ pins: shown.pins, before: earlier, slipping }, drawn, loads);
  const torques = shown.pins.map(({ torqueNm }) => torqueNm);
  return (
    <NotesFigure
      axisTitle={drawn === 'torque' ? words.axisTorque : words.axisRatio}
      name={drawn === 'torque' ? words.nameTorque : words.nameRatio}
      column={drawn === 'torque' ? 'torque_nm' : 'torque_per_string_pull'}
      summary={words.summary(
        shown.pins.length,
        formatTorqueInBoth(Math.min(...torques)),
        formatTorqueInBoth(Math.max(...torques)),
      )}
      series={series}
      bands={torqueBandsOf(drawn)}
      scale={roundScale(series.flatMap(({ points }) => points.map(({ y }) => y)))}
      compass={instrument.compass}
      marks={breakMarks(instrument)}
      formatTick={(value) => formatNumber(value, Number.isInteger(value) ? 0 : 1)}
    />
  );
}

function Facts({
  figures,
  shown,
  noteCount: notes,
}: {
  readonly figures: TorqueFigures;
  readonly shown: VisitPins;
  readonly noteCount: number;
}) {
  const { pinCount, medianNm, lowestNm, highestNm, doubtfulCount } = figures;
  return (
    <FactList
      facts={[
        { label: words.facts.pins, value: words.facts.ofNotes(pinCount, notes) },
        { label: words.facts.median, value: formatTorqueInBoth(medianNm) },
        { label: words.facts.range, value: words.facts.range2(formatTorque(lowestNm), formatTorque(highestNm)) },
        { label: words.facts.doubtful, value: words.facts.ofAll(doubtfulCount, pinCount) },
        { label: words.facts.humidity, value: formatHumidity(shown.visit.humidityPct) },
      ]}
    />
  );
}

const SECTION_COLUMNS: readonly Column<SectionTorque>[] = [
  {
    key: 'section',
    title: words.sections.section,
    isRowHeader: true,
    cell: ({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi),
  },
  { key: 'pins', title: words.sections.pins, isNumber: true, cell: ({ figures }) => figures.pinCount },
  {
    key: 'median',
    title: words.sections.median,
    isNumber: true,
    cell: ({ figures }) => formatTorque(figures.medianNm),
  },
  {
    key: 'lowest',
    title: words.sections.lowest,
    isNumber: true,
    cell: ({ figures }) => formatTorque(figures.lowestNm),
  },
  { key: 'doubtful', title: words.sections.doubtful, isNumber: true, cell: ({ figures }) => figures.doubtfulCount },
];

function labelOf({ visit, pins }: VisitPins): string {
  return words.visitChoice(formatDate(visit.visitedOn), pins.length, formatHumidity(visit.humidityPct));
}
