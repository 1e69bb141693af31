import { lazy, Suspense } from 'react';
import type { Compass } from '../piano/compass.ts';
import { LegendCurve, LegendSymbol } from './ChartSymbol.tsx';
import { noteTicks, type Scale } from './chartScale.ts';
import type { NoteCurve } from './NoteCurveLayer.tsx';
import type { NoteMark, NoteSeries } from './NotesChart.tsx';
import styles from './NotesFigure.module.css';
import { texts } from './texts.ts';

// The chart library is large: it is fetched when there is something to draw.
const NotesChart = lazy(async () => ({ default: (await import('./NotesChart.tsx')).NotesChart }));

type NotesFigureProps = {
  /** What is drawn, and its unit. */
  readonly axisTitle: string;
  /** One sentence for those who do not see the picture; the numbers stand in a table beside it. */
  readonly summary: string;
  readonly series: readonly NoteSeries[];
  readonly curve?: NoteCurve;
  readonly scale: Scale;
  readonly compass: Compass;
  readonly marks: readonly NoteMark[];
  readonly formatTick?: (value: number) => string;
};

/** A chart along the compass with its title and, where there is more than one kind of sign, what each of them means. */
export function NotesFigure({ axisTitle, compass, ...chart }: NotesFigureProps) {
  const { series, curve } = chart;
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.axisTitle}>
        {axisTitle} <Legend series={series} curve={curve} />
      </figcaption>
      <Suspense fallback={<p className={styles.drawing}>{texts.charts.drawing}</p>}>
        <NotesChart
          {...chart}
          lowest={compass.lowestMidi}
          highest={compass.highestMidi}
          noteTicks={noteTicks(compass)}
        />
      </Suspense>
    </figure>
  );
}

type LegendProps = { readonly series: readonly NoteSeries[]; readonly curve: NoteCurve | undefined };

function Legend({ series, curve }: LegendProps) {
  if (series.length < 2 && !curve) return null;
  return (
    <span className={styles.legend}>
      {series.map((one) => (
        <span key={one.name}>
          <LegendSymbol shape={one.shape} /> {one.name}
        </span>
      ))}
      {curve && (
        <span>
          <LegendCurve /> {curve.name}
        </span>
      )}
    </span>
  );
}
