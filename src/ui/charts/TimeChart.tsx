import {
  CartesianGrid,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  Tooltip,
  usePlotArea,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from 'recharts';
import { formatNumber, formatSigned } from '../../piano/format.ts';
import { ChartSymbol, type ChartSymbolShape } from '../ChartSymbol.tsx';
import type { Scale } from '../chartScale.ts';
import { type NoteCurve, NoteCurveLayer } from '../NoteCurveLayer.tsx';
import { BarLayer } from './BarLayer.tsx';
import { type BarPoint, type DrawnPoint, pointBox } from './pointParts.tsx';
import styles from './TimeChart.module.css';
import type { TimeScale } from './timeScale.ts';

/** `x` is a time in milliseconds. */
export type TimePoint = BarPoint & { readonly detail: string };
export type TimeSeries = {
  readonly name: string;
  readonly shape: ChartSymbolShape;
  readonly points: readonly TimePoint[];
};
export type TimeMark = { readonly x: number; readonly label: string };

export type TimeChartProps = {
  /** One sentence that says what the picture shows. */
  readonly summary: string;
  readonly series: readonly TimeSeries[];
  /** Drawn under the signs. */
  readonly curve?: NoteCurve;
  /** Thin lines that join what belongs together. */
  readonly links?: readonly (readonly { readonly x: number; readonly y: number }[])[];
  readonly time: TimeScale;
  readonly scale: Scale;
  readonly marks: readonly TimeMark[];
  /** A limit drawn across, with its name. */
  readonly limit?: { readonly y: number; readonly label: string };
  /** No sign before the figures beside the axis, and no line at nought. */
  readonly isUnsigned?: boolean;
  readonly isLow?: boolean;
};

const AXIS_TEXT = { fill: 'var(--ink-soft)', fontSize: 14 };
const MARK_TEXT = { fill: 'var(--ink-soft)', fontSize: 12 };

/** Figures over the years, with their uncertainty. */
export function TimeChart(props: TimeChartProps) {
  const { summary, series, curve, links = [], time, scale, marks, limit, isUnsigned, isLow } = props;
  const labels = new Map(time.ticks.map((tick) => [tick.time, tick.label]));
  return (
    <div className={styles.chart} data-low={isLow} role="img" aria-label={summary}>
      <ResponsiveContainer width="100%" height="100%">
        <ScatterChart
          margin={{ top: marks.length > 0 ? 24 : 8, right: 16, bottom: 4, left: 0 }}
          accessibilityLayer={false}
        >
          <CartesianGrid stroke="var(--rule)" vertical={false} />
          <XAxis
            type="number"
            dataKey="x"
            domain={[time.low, time.high]}
            ticks={time.ticks.map((tick) => tick.time)}
            tickFormatter={(value: number) => labels.get(value) ?? ''}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
            allowDataOverflow
          />
          <YAxis
            type="number"
            dataKey="y"
            width={52}
            domain={[scale.low, scale.high]}
            ticks={[...scale.ticks]}
            tickFormatter={isUnsigned ? plainTick : signedTick}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
          />
          {marks.map((mark) => (
            <ReferenceLine
              key={`${mark.x} ${mark.label}`}
              x={mark.x}
              stroke="var(--rule-strong)"
              strokeDasharray="2 4"
              label={{ value: mark.label, position: 'top', offset: 6, ...MARK_TEXT }}
            />
          ))}
          {!isUnsigned && <ReferenceLine y={0} stroke="var(--ink)" strokeWidth={1.5} />}
          {limit && (
            <ReferenceLine
              y={limit.y}
              stroke="var(--ink)"
              strokeDasharray="8 4"
              label={{ value: limit.label, position: 'insideBottomLeft', ...MARK_TEXT }}
            />
          )}
          {curve && <NoteCurveLayer curve={curve} />}
          <LinkLayer links={links} />
          <BarLayer points={series.flatMap(({ points }) => points)} />
          <Tooltip cursor={false} isAnimationActive={false} content={pointBox} />
          {series.map((one) => (
            <Scatter
              key={one.name}
              name={one.name}
              data={[...one.points]}
              isAnimationActive={false}
              shape={({ cx, cy }: DrawnPoint) => <ChartSymbol shape={one.shape} x={cx} y={cy} />}
            />
          ))}
        </ScatterChart>
      </ResponsiveContainer>
    </div>
  );
}

function signedTick(value: number): string {
  return formatSigned(value, Number.isInteger(value) ? 0 : 1);
}

function plainTick(value: number): string {
  return formatNumber(value, Number.isInteger(value) ? 0 : 1);
}

function LinkLayer({ links }: { readonly links: readonly (readonly { readonly x: number; readonly y: number }[])[] }) {
  const xOf = useXAxisScale();
  const yOf = useYAxisScale();
  const area = usePlotArea();
  if (!xOf || !yOf || !area) return null;
  return (
    <g>
      {links.map((link) => (
        <path
          key={`${link[0]?.x} ${link[0]?.y}`}
          className={styles.link}
          d={`M${link.map(({ x, y }) => `${xOf(x)} ${yOf(y)}`).join('L')}`}
        />
      ))}
    </g>
  );
}
