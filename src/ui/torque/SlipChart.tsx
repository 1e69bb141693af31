import { roundScale } from '../chartScale.ts';
import { AcrossAxis, UpAxis } from '../charts/Axes.tsx';
import { plainTick } from '../charts/axisTicks.ts';
import { PlotFrame } from '../charts/PlotFrame.tsx';
import { ZeroLine } from '../charts/PlotLines.tsx';
import { PointLayers } from '../charts/PointLayers.tsx';
import type { ChartPoint } from '../charts/pointParts.tsx';
import { texts } from '../texts.ts';
import styles from './SlipChart.module.css';

type Props = { readonly summary: string; readonly points: readonly ChartPoint[] };

export function SlipChart({ summary, points }: Props) {
  const across = roundScale(points.map(({ x }) => x));
  const up = roundScale(points.flatMap(({ low, high }) => [low, high]));
  return (
    <PlotFrame
      summary={summary}
      className={styles.chart}
      margin={{ top: 16, right: 24, bottom: 20, left: 0 }}
      lines="both"
    >
      <AcrossAxis scale={across} formatTick={plainTick} title={texts.torque.slip.xAxis} />
      <UpAxis scale={up} />
      <ZeroLine />
      <PointLayers series={[{ name: '', shape: 'disc', points }]} />
    </PlotFrame>
  );
}
