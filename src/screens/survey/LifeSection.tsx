import { formatDuration } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { SurveyLife } from '../../survey/surveyCurves.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { logScale } from '../../ui/chartScale.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { CurveTable } from './CurveTable.tsx';
import { valuesDrawn } from './curveSeries.ts';
import { lifeCurve, lifeRows, lifeSeries, lifeSpreadSentence, weakSentence } from './lifeChart.ts';

const words = texts.charts.life;

type Props = { readonly instrument: Instrument; readonly life: SurveyLife | null };

export function LifeSection({ instrument, life }: Props) {
  if (!life)
    return (
      <Section title={words.title}>
        <EmptyState>
          <p>{words.tooFew}</p>
        </EmptyState>
      </Section>
    );
  const series = lifeSeries(life);
  const curve = lifeCurve(life);
  const weak = weakSentence(life);
  return (
    <Section title={words.title} note={words.note}>
      <p>{weak}</p>
      <NotesFigure
        axisTitle={words.axisTitle}
        name={words.title}
        column="time_for_60_db_s"
        summary={words.summary(life.notes.length, weak)}
        series={series}
        curve={curve}
        scale={logScale(valuesDrawn(series, curve))}
        compass={instrument.compass}
        marks={breakMarks(instrument)}
        formatTick={formatDuration}
      />
      <p>{lifeSpreadSentence(life)}</p>
      <CurveTable
        caption={words.caption}
        measuredTitle={words.measuredS}
        curveTitle={words.curveS}
        rows={lifeRows(life)}
      />
    </Section>
  );
}
