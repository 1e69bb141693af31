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
import { formatNumber, formatSigned } from '../../piano/format.ts';
import { ChartSymbol } from '../ChartSymbol.tsx';
import { roundScale } from '../chartScale.ts';
import { BarLayer } from '../charts/BarLayer.tsx';
import { type DrawnPoint, pointBox } from '../charts/pointParts.tsx';
import { texts } from '../texts.ts';
import styles from './SlipChart.module.css';
import type { SlipPoint } from './slipPoints.ts';

type Props = { readonly summary: string; readonly points: readonly SlipPoint[] };

const AXIS_TEXT = { fill: 'var(--ink-soft)', fontSize: 14 };
const TITLE_TEXT = { fill: 'var(--ink-soft)', fontSize: 13 };

export function SlipChart({ summary, points }: Props) {
  const across = roundScale(points.map(({ x }) => x));
  const up = roundScale(points.flatMap(({ low, high }) => [low, high]));
  return (
    <div className={styles.chart} role="img" aria-label={summary}>
      <ResponsiveContainer width="100%" height="100%">
        <ScatterChart margin={{ top: 16, right: 24, bottom: 20, left: 0 }} accessibilityLayer={false}>
          <CartesianGrid stroke="var(--rule)" />
          <XAxis
            type="number"
            dataKey="x"
            domain={[across.low, across.high]}
            ticks={[...across.ticks]}
            tickFormatter={(value: number) => formatNumber(value, Number.isInteger(value) ? 0 : 1)}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
            label={{ value: texts.torque.slip.xAxis, position: 'insideBottom', offset: -14, ...TITLE_TEXT }}
          />
          <YAxis
            type="number"
            dataKey="y"
            width={52}
            domain={[up.low, up.high]}
            ticks={[...up.ticks]}
            tickFormatter={(value: number) => formatSigned(value, Number.isInteger(value) ? 0 : 1)}
            tick={AXIS_TEXT}
            stroke="var(--rule-strong)"
          />
          <ReferenceLine y={0} stroke="var(--ink)" strokeWidth={1.5} />
          <BarLayer points={points} />
          <Tooltip cursor={false} isAnimationActive={false} content={pointBox} />
          <Scatter
            data={[...points]}
            isAnimationActive={false}
            shape={({ cx, cy, tag }: DrawnPoint) => <ChartSymbol shape="disc" x={cx} y={cy} tag={tag} />}
          />
        </ScatterChart>
      </ResponsiveContainer>
    </div>
  );
}
