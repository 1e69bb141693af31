import { formatDate, formatYears } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { roundScale } from '../../ui/chartScale.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { texts } from '../../ui/texts.ts';
import { ChangeFacts } from './ChangeFacts.tsx';
import { ChangeTable } from './ChangeTable.tsx';
import { changeSeries } from './changeSeries.ts';
import type { InstrumentView } from './useInstrument.ts';
import type { VisitChange } from './visitChanges.ts';

const words = texts.instrument.change;

type Props = {
  readonly instrument: Instrument;
  readonly view: InstrumentView;
};

export function ChangeSection({ instrument, view: { figures, chosen, choose } }: Props) {
  if (figures.state !== 'ready') return <ReadState observed={figures} />;
  const { intervals } = figures.value;
  if (!chosen)
    return (
      <EmptyState>
        <p>{words.empty}</p>
      </EmptyState>
    );
  const choices = [...intervals]
    .reverse()
    .map((interval) => ({ value: interval.toVisit.id, label: labelOf(interval) }));
  return (
    <>
      <SelectField id="interval" label={words.interval} value={chosen.toVisit.id} choices={choices} onChange={choose} />
      <ChangeFacts interval={chosen} />
      {chosen.work.map((event) => (
        <Notice key={event.id} kind="caution" word={texts.common.cautionWord}>
          {words.workWithin(texts.instrument.events.kinds[event.kind], formatDate(event.happenedOn))}
        </Notice>
      ))}
      <ChangeChart instrument={instrument} interval={chosen} />
      <ChangeTable notes={chosen.change.notes} />
    </>
  );
}

function ChangeChart({ instrument, interval }: { readonly instrument: Instrument; readonly interval: VisitChange }) {
  const { compass } = instrument;
  const { notes } = interval.change;
  const series = changeSeries(notes);
  const from = formatDate(interval.fromVisit.visitedOn);
  const to = formatDate(interval.toVisit.visitedOn);
  return (
    <NotesFigure
      axisTitle={words.axisTitle}
      name={`${words.title} ${interval.fromVisit.visitedOn} ${interval.toVisit.visitedOn}`}
      column="change_cents"
      summary={words.summary(from, to, notes.length)}
      series={series}
      scale={roundScale(series.flatMap(({ points }) => points.flatMap(({ low, high }) => [low, high])))}
      compass={compass}
      marks={breakMarks(instrument)}
    />
  );
}

function labelOf({ fromVisit, toVisit, years, fromStage }: VisitChange): string {
  const [from, to] = [formatDate(fromVisit.visitedOn), formatDate(toVisit.visitedOn)];
  const label = words.intervalChoice(from, to, formatYears(years));
  return fromStage === 'as-left' ? label : `${label}, ${words.notTuned}`;
}
