import { XAxis, YAxis } from 'recharts';
import type { Scale } from '../chartScale.ts';
import { signedTick } from './axisTicks.ts';

const TICK_TEXT = { fill: 'var(--ink-soft)', fontSize: 14 };
const TITLE_TEXT = { fill: 'var(--ink-soft)', fontSize: 13 };

type AxisProps = {
  readonly scale: Scale;
  readonly formatTick: (value: number) => string;
};

type AcrossProps = AxisProps & {
  /** Stands under the ticks; the chart's margin must leave room for it. */
  readonly title?: string;
  /** What lies beyond the scale is cut off; otherwise the scale widens. */
  readonly isCutOff?: boolean;
};

export function AcrossAxis({ scale, formatTick, title, isCutOff = false }: AcrossProps) {
  return (
    <XAxis
      type="number"
      dataKey="x"
      domain={[scale.low, scale.high]}
      ticks={[...scale.ticks]}
      tickFormatter={formatTick}
      tick={TICK_TEXT}
      stroke="var(--rule-strong)"
      allowDataOverflow={isCutOff}
      {...(title === undefined
        ? {}
        : { label: { value: title, position: 'insideBottom', offset: -12, ...TITLE_TEXT } })}
    />
  );
}

type UpProps = Pick<AxisProps, 'scale'> & {
  /** With a sign and without a unit unless said. */
  readonly formatTick?: (value: number) => string;
  readonly widthPx?: number;
};

export function UpAxis({ scale, formatTick = signedTick, widthPx = 52 }: UpProps) {
  return (
    <YAxis
      type="number"
      dataKey="y"
      width={widthPx}
      scale={scale.isLog ? 'log' : 'linear'}
      domain={[scale.low, scale.high]}
      ticks={[...scale.ticks]}
      tickFormatter={formatTick}
      tick={TICK_TEXT}
      stroke="var(--rule-strong)"
    />
  );
}
