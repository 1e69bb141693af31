import { memo, useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { changeBetweenVisits, type SpanChange } from '../../stability/driftViews.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { roundScale } from '../../ui/chartScale.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { ownSeries, readSeries, wholeCurve } from './spanSeries.ts';

const words = texts.stability.span;

type Props = { readonly instrument: Instrument; readonly drift: Drift };

/** The change along the compass between two visits, and what season and the whole instrument account for. */
export const SpanSection = memo(function SpanSection({ instrument, drift }: Props) {
  const usable = drift.intervals.filter((interval) => interval.hasBaseline && interval.medianCents !== null);
  const newest = usable.at(-1);
  const [from, setFrom] = useState(newest?.fromDate ?? '');
  const [to, setTo] = useState(newest?.toDate ?? '');
  const starts = unique(usable.map((interval) => interval.fromDate)).filter((date) => date < to);
  const ends = unique(usable.map((interval) => interval.toDate)).filter((date) => date > from);
  const changes = changeBetweenVisits(drift, from, to);
  const gaps = drift.intervals.filter((one) => !one.hasBaseline && one.fromDate >= from && one.toDate <= to).length;
  const isLong = usable.filter((interval) => interval.fromDate >= from && interval.toDate <= to).length > 1;
  return (
    <Section title={words.title} note={words.note}>
      <FieldRow>
        <SelectField id="span-from" label={words.from} value={from} choices={choicesOf(starts)} onChange={setFrom} />
        <SelectField id="span-to" label={words.to} value={to} choices={choicesOf(ends)} onChange={setTo} />
      </FieldRow>
      {gaps > 0 && <p>{words.gaps(gaps)}</p>}
      {isLong && <p>{words.tunings}</p>}
      {changes.length === 0 ? (
        <EmptyState>
          <p>{words.none}</p>
        </EmptyState>
      ) : (
        <SpanCharts instrument={instrument} changes={changes} from={from} to={to} />
      )}
    </Section>
  );
});

type ChartsProps = {
  readonly instrument: Instrument;
  readonly changes: readonly SpanChange[];
  readonly from: string;
  readonly to: string;
};

function SpanCharts({ instrument, changes, from, to }: ChartsProps) {
  const read = readSeries(changes);
  const own = ownSeries(changes);
  const curve = wholeCurve(changes, instrument.bassBridgeTopMidi);
  const curveValues = curve.stretches.flat().flatMap(({ low, high }) => [low, high]);
  const common = { compass: instrument.compass, marks: breakMarks(instrument) };
  return (
    <>
      <NotesFigure
        {...common}
        name={`${words.readName} ${from} ${to}`}
        column="change_cents"
        axisTitle={words.readTitle}
        summary={words.summary(changes.length, formatDate(from), formatDate(to))}
        series={read}
        curve={curve}
        scale={roundScale([...read.flatMap(({ points }) => points.map((point) => point.y)), ...curveValues])}
      />
      <NotesFigure
        {...common}
        name={`${words.ownName} ${from} ${to}`}
        column="own_change_cents"
        axisTitle={words.ownTitle}
        summary={words.ownSummary(changes.length)}
        series={own}
        scale={roundScale(own.flatMap(({ points }) => points.flatMap(({ low, high }) => [low, high])))}
      />
    </>
  );
}

function unique(dates: readonly string[]): string[] {
  return [...new Set(dates)].sort();
}

function choicesOf(dates: readonly string[]) {
  return dates.map((value) => ({ value, label: formatDate(value) }));
}
