import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';
import { formatShare } from '../../piano/format.ts';
import { roundScale } from '../chartScale.ts';
import { AcrossAxis, UpAxis } from '../charts/Axes.tsx';
import { plainTick } from '../charts/axisTicks.ts';
import { PlotFrame } from '../charts/PlotFrame.tsx';
import { UnseenPoint } from '../charts/UnseenPoint.tsx';
import { texts } from '../texts.ts';
import styles from './held.module.css';

/** From `years` on this share holds; `low` and `high` are its limits. Years since the work. */
export type SharePoint = {
  readonly years: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** Somebody was last seen here, still holding. */
  readonly isLastSeen: boolean;
};

export type ShareChartProps = {
  readonly summary: string;
  readonly points: readonly SharePoint[];
  /** How many are under observation at a time, printed under the axis at its ticks. */
  readonly atRisk: (years: number) => number;
};

const SHARE_SCALE = { low: 0, high: 1, ticks: [0, 0.25, 0.5, 0.75, 1] };

/** A stair that goes down where something no longer held, its limits, a stroke where one was last seen, and the numbers left. */
export function ShareChart({ summary, points, atRisk }: ShareChartProps) {
  const scale = roundScale(points.map(({ years }) => years));
  const ticks = scale.ticks.filter((tick) => tick >= 0);
  return (
    <PlotFrame summary={summary} className={styles.chart} margin={{ top: 12, right: 24, bottom: 60, left: 0 }}>
      <AcrossAxis scale={{ low: 0, high: scale.high, ticks }} formatTick={plainTick} title={texts.held.yearsSince} />
      <UpAxis scale={SHARE_SCALE} formatTick={shareTick} widthPx={60} />
      <UnseenPoint />
      <StairLayer points={points} />
      <AtRiskLayer ticks={ticks} atRisk={atRisk} />
    </PlotFrame>
  );
}

function shareTick(share: number): string {
  return share === 0 ? '0' : formatShare(share);
}

function StairLayer({ points }: Pick<ShareChartProps, 'points'>) {
  const xOf = useXAxisScale();
  const yOf = useYAxisScale();
  if (!xOf || !yOf) return null;
  const stair = (value: (point: SharePoint) => number): string[] =>
    points.flatMap((point, index) => {
      const x = xOf(point.years) ?? 0;
      const before = points[index - 1];
      const here = `${x} ${yOf(value(point)) ?? 0}`;
      return before ? [`${x} ${yOf(value(before)) ?? 0}`, here] : [here];
    });
  const high = stair((point) => point.high);
  const low = stair((point) => point.low).reverse();
  return (
    <g>
      <path className={styles.band} d={`M${[...high, ...low].join('L')}z`} />
      <path className={styles.share} d={`M${stair((point) => point.share).join('L')}`} />
      {points
        .filter(({ isLastSeen }) => isLastSeen)
        .map(({ years, share }) => (
          <path key={years} className={styles.lastSeen} d={`M${xOf(years) ?? 0} ${(yOf(share) ?? 0) - 5}v10`} />
        ))}
    </g>
  );
}

function AtRiskLayer({ ticks, atRisk }: Pick<ShareChartProps, 'atRisk'> & { readonly ticks: readonly number[] }) {
  const xOf = useXAxisScale();
  const area = usePlotArea();
  if (!xOf || !area) return null;
  const y = area.y + area.height + 70;
  return (
    <g>
      <text className={styles.soft} x={area.x} y={y - 16}>
        {texts.held.share.atRisk}
      </text>
      {ticks.map((tick) => (
        <text key={tick} className={styles.name} x={xOf(tick) ?? 0} y={y} textAnchor="middle">
          {atRisk(tick)}
        </text>
      ))}
    </g>
  );
}
