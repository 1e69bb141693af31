import type { CsvSheet } from '../files/csvTable.ts';
import type { Compass } from '../piano/compass.ts';
import { midiToName } from '../piano/note.ts';
import { LegendCurve, LegendSymbol } from './ChartSymbol.tsx';
import { noteTicks, type Scale } from './chartScale.ts';
import { ChartFigure, type LegendItem } from './charts/ChartFigure.tsx';
import { Picture } from './charts/Picture.tsx';
import { fetchedOnce } from './fetchedOnce.ts';
import type { NoteBand } from './NoteBandLayer.tsx';
import type { NoteCurve } from './NoteCurveLayer.tsx';
import type { NoteMark, NoteSeries } from './NotesChart.tsx';
import styles from './NotesFigure.module.css';

const NOTES_CHART = fetchedOnce(async () => (await import('./NotesChart.tsx')).NotesChart);

type NotesFigureProps = {
  /** What is drawn, and its unit. */
  readonly axisTitle: string;
  /** What the chart's files are called; its title where not said. */
  readonly name?: string;
  /** Name of the drawn figure in the chart's CSV file, with its unit at the end. */
  readonly column?: string;
  /** One sentence for those who do not see the picture; the numbers stand in a table beside it. */
  readonly summary: string;
  readonly series: readonly NoteSeries[];
  readonly curve?: NoteCurve;
  readonly bands?: readonly NoteBand[];
  readonly scale: Scale;
  readonly compass: Compass;
  readonly marks: readonly NoteMark[];
  readonly formatTick?: (value: number) => string;
};

/** A chart along the compass with its title and, where there is more than one kind of sign, what each of them means. */
export function NotesFigure({ axisTitle, name = axisTitle, column = 'value', compass, ...chart }: NotesFigureProps) {
  const { series, curve } = chart;
  return (
    <ChartFigure
      name={name}
      title={axisTitle}
      legend={legendOf(series, curve)}
      sheet={() => notesSheet(column, series, curve)}
    >
      <Picture
        drawing={NOTES_CHART}
        className={styles.drawing}
        chart={{ ...chart, lowest: compass.lowestMidi, highest: compass.highestMidi, noteTicks: noteTicks(compass) }}
      />
    </ChartFigure>
  );
}

function legendOf(series: readonly NoteSeries[], curve: NoteCurve | undefined): LegendItem[] {
  if (series.length < 2 && !curve) return [];
  const signs = series.map(({ name, shape }) => ({ key: name, sign: <LegendSymbol shape={shape} />, meaning: name }));
  return curve ? [...signs, { key: 'curve', sign: <LegendCurve />, meaning: curve.name }] : signs;
}

/** One row for each sign, then one for each note of the curve. */
export function notesSheet(column: string, series: readonly NoteSeries[], curve: NoteCurve | undefined): CsvSheet {
  const named = [...series, ...(curve ? [{ name: curve.name, points: curve.stretches.flat() }] : [])];
  return {
    columns: ['note', 'midi', 'series', column, `${column}_low`, `${column}_high`],
    rows: named.flatMap(({ name, points }) =>
      points.map(({ x, y, low, high }) => [midiToName(Math.round(x)), Math.round(x), name, y, low, high]),
    ),
  };
}
