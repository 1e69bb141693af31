import {
  CartesianGrid,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { formatNote, formatSigned } from '../piano/format.ts';
import { ChartSymbol, type ChartSymbolShape, type PointTag } from './ChartSymbol.tsx';
import type { Scale } from './chartScale.ts';
import { BarLayer } from './charts/BarLayer.tsx';
import { type BarPoint, type DrawnPoint, pointBox } from './charts/pointParts.tsx';
import { type NoteBand, NoteBandLayer, NoteBandNames } from './NoteBandLayer.tsx';
import { type NoteCurve, NoteCurveLayer } from './NoteCurveLayer.tsx';
import styles from './NotesChart.module.css';

export type NotePoint = BarPoint & {
  /** What the box beside the pointer says. */
  readonly detail: string;
  /** Written beside the point, where it must not be overlooked. */
  readonly tag?: PointTag;
};
export type NoteSeries = {
  readonly name: string;
  readonly shape: ChartSymbolShape;
  readonly points: readonly NotePoint[];
};
export type NoteMark = { readonly x: number; readonly label: string };

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

const AXIS_TEXT = { fill: 'var(--ink-soft)', fontSize: 14 };
/** Labels of neighbouring marks stand at two heights, so that they do not run into each other on a narrow screen. */
const MARK_TEXT = { fill: 'var(--ink-soft)', fontSize: 12 };

/** A figure for each note along the compass, with its uncertainty, a zero line, and marks where the row of strings breaks. */
export function NotesChart(props: NotesChartProps) {
  const {
    summary,
    series,
    curve,
    bands,
    scale,
    lowest,
    highest,
    noteTicks,
    marks,
    formatTick = formatSignedTick,
  } = props;
  return (
    <div className={styles.chart} role="img" aria-label={summary}>
      <ResponsiveContainer width="100%" height="100%">
        <ScatterChart margin={{ top: 40, right: 16, bottom: 4, left: 0 }} accessibilityLayer={false}>
          <CartesianGrid stroke="var(--rule)" vertical={false} />
          <XAxis
            type="number"
            dataKey="x"
            domain={[lowest - 1, highest + 1]}
            ticks={[...noteTicks]}
            tickFormatter={formatNote}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
          />
          <YAxis
            type="number"
            dataKey="y"
            width={scale.isLog ? 68 : 52}
            scale={scale.isLog ? 'log' : 'linear'}
            domain={[scale.low, scale.high]}
            ticks={[...scale.ticks]}
            tickFormatter={formatTick}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
          />
          {marks.map((mark, index) => (
            <ReferenceLine
              key={`${mark.x} ${mark.label}`}
              x={mark.x}
              stroke="var(--rule-strong)"
              strokeDasharray="2 4"
              label={{ value: mark.label, position: 'top', offset: index % 2 === 0 ? 4 : 20, ...MARK_TEXT }}
            />
          ))}
          {!scale.isLog && <ReferenceLine y={0} stroke="var(--ink)" strokeWidth={1.5} />}
          {bands && <NoteBandLayer bands={bands} />}
          {curve && <NoteCurveLayer curve={curve} />}
          <BarLayer points={series.flatMap(({ points }) => points)} />
          <Tooltip cursor={false} isAnimationActive={false} content={pointBox} />
          {series.map((one) => (
            <Scatter
              key={one.name}
              name={one.name}
              data={[...one.points]}
              isAnimationActive={false}
              shape={({ cx, cy, tag }: DrawnPoint) => <ChartSymbol shape={one.shape} x={cx} y={cy} tag={tag} />}
            />
          ))}
          {bands && <NoteBandNames bands={bands} />}
        </ScatterChart>
      </ResponsiveContainer>
    </div>
  );
}

function formatSignedTick(value: number): string {
  return formatSigned(value, Number.isInteger(value) ? 0 : 1);
}
