import { formatNote } from '../piano/format.ts';
import type { Scale } from './chartScale.ts';
import { AcrossAxis, UpAxis } from './charts/Axes.tsx';
import { PlotFrame } from './charts/PlotFrame.tsx';
import { MarkLines, type PlotMark, ZeroLine } from './charts/PlotLines.tsx';
import { PointLayers } from './charts/PointLayers.tsx';
import type { ChartPoint, ChartSeries } from './charts/pointParts.tsx';
import { type NoteBand, NoteBandLayer, NoteBandNames } from './NoteBandLayer.tsx';
import { type NoteCurve, NoteCurveLayer } from './NoteCurveLayer.tsx';
import styles from './NotesChart.module.css';

/** `x` is a MIDI note number, or a little beside it where several strings of a note are drawn. */
export type NotePoint = ChartPoint;
export type NoteSeries = ChartSeries;
export type NoteMark = PlotMark;

export type NotesChartProps = {
  /** One sentence that says what the picture shows; the numbers stand in a table beside it. */
  readonly summary: string;
  readonly series: readonly NoteSeries[];
  /** Drawn under the points. */
  readonly curve?: NoteCurve;
  /** Drawn under everything. */
  readonly bands?: readonly NoteBand[];
  readonly scale: Scale;
  readonly lowest: number;
  readonly highest: number;
  readonly noteTicks: readonly number[];
  readonly marks: readonly NoteMark[];
  /** How the figures beside the axis are written; with a sign and without a unit unless said. */
  readonly formatTick?: (value: number) => string;
};

/** A figure for each note along the compass, with its uncertainty, a zero line, and marks where the row of strings breaks. */
export function NotesChart({ summary, series, curve, bands, scale, marks, ...axes }: NotesChartProps) {
  const { lowest, highest, noteTicks, formatTick } = axes;
  return (
    <PlotFrame summary={summary} className={styles.chart} margin={{ top: 40, right: 16, bottom: 4, left: 0 }}>
      <AcrossAxis scale={{ low: lowest - 1, high: highest + 1, ticks: noteTicks }} formatTick={formatNote} />
      <UpAxis scale={scale} widthPx={scale.isLog ? 68 : 52} {...(formatTick && { formatTick })} />
      <MarkLines marks={marks} heightsPx={[4, 20]} />
      {!scale.isLog && <ZeroLine />}
      {bands && <NoteBandLayer bands={bands} />}
      {curve && <NoteCurveLayer curve={curve} />}
      <PointLayers series={series} />
      {bands && <NoteBandNames bands={bands} />}
    </PlotFrame>
  );
}
