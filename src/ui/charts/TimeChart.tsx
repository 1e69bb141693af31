import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';
import type { Scale } from '../chartScale.ts';
import { type NoteCurve, NoteCurveLayer } from '../NoteCurveLayer.tsx';
import { AcrossAxis, UpAxis } from './Axes.tsx';
import { plainTick, signedTick } from './axisTicks.ts';
import { PlotFrame } from './PlotFrame.tsx';
import { LimitLine, MarkLines, type PlotMark, ZeroLine } from './PlotLines.tsx';
import { PointLayers } from './PointLayers.tsx';
import type { ChartPoint, ChartSeries } from './pointParts.tsx';
import styles from './TimeChart.module.css';
import type { TimeScale } from './timeScale.ts';

/** `x` is a time in milliseconds. */
export type TimePoint = ChartPoint;
export type TimeMark = PlotMark;

export type TimeChartProps = {
  /** One sentence that says what the picture shows. */
  readonly summary: string;
  readonly series: readonly ChartSeries[];
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

/** Figures over the years, with their uncertainty. */
export function TimeChart(props: TimeChartProps) {
  const { summary, series, curve, links = [], time, scale, marks, limit, isUnsigned, isLow } = props;
  const labels = new Map(time.ticks.map((tick) => [tick.time, tick.label]));
  return (
    <PlotFrame
      summary={summary}
      className={isLow ? styles.low : styles.chart}
      margin={{ top: marks.length > 0 ? 24 : 8, right: 16, bottom: 4, left: 0 }}
    >
      <AcrossAxis
        scale={{ low: time.low, high: time.high, ticks: [...labels.keys()] }}
        formatTick={(value) => labels.get(value) ?? ''}
        isCutOff
      />
      <UpAxis scale={scale} formatTick={isUnsigned ? plainTick : signedTick} />
      <MarkLines marks={marks} heightsPx={[6]} />
      {!isUnsigned && <ZeroLine />}
      {limit && <LimitLine limit={limit} />}
      {curve && <NoteCurveLayer curve={curve} />}
      <LinkLayer links={links} />
      <PointLayers series={series} />
    </PlotFrame>
  );
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
