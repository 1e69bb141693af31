import { memo } from 'react';
import { formatResponse } from '../../piano/formatStability.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import { roundScale } from '../../ui/chartScale.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotesFigure } from '../../ui/NotesFigure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { humiditySentences } from './humidityWords.ts';
import { stringSeries } from './spanSeries.ts';

const words = texts.stability.humidity;

/** How far each string answers humidity, along the compass. */
export const HumiditySection = memo(function HumiditySection({
  instrument,
  drift,
}: {
  readonly instrument: Instrument;
  readonly drift: Drift;
}) {
  const { detail } = drift;
  if (!detail.isHumidityKnown)
    return (
      <Section title={words.title}>
        <EmptyState>
          <p>{words.unknown}</p>
        </EmptyState>
      </Section>
    );
  const figures = detail.strings.map((string) => ({ ...string, value: string.centsPerPct }));
  const series = stringSeries(figures, ({ value, standardUncertainty }) => formatResponse(value, standardUncertainty));
  return (
    <Section title={words.title} note={words.note}>
      <p>{humiditySentences(detail.strings).join(' ')}</p>
      <NotesFigure
        name={words.name}
        column="cents_per_percent_rh"
        axisTitle={words.chartTitle}
        summary={words.summary(figures.length)}
        series={series}
        scale={roundScale(
          series.flatMap(({ points }) => points.flatMap(({ low, high }) => [low, high])),
          0.5,
        )}
        compass={instrument.compass}
        marks={breakMarks(instrument)}
      />
    </Section>
  );
});
