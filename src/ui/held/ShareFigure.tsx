import { ChartFigure } from '../charts/ChartFigure.tsx';
import { Picture } from '../charts/Picture.tsx';
import { fetchedOnce } from '../fetchedOnce.ts';
import styles from './held.module.css';
import type { ShareChartProps } from './ShareChart.tsx';

const SHARE_CHART = fetchedOnce(async () => (await import('./ShareChart.tsx')).ShareChart);

type Props = ShareChartProps & { readonly name: string; readonly title: string };

/** What share of a group still holds so many years after the work, with its limits and the numbers it rests on. */
export function ShareFigure({ name, title, ...chart }: Props) {
  return (
    <ChartFigure
      name={name}
      title={title}
      sheet={() => ({
        columns: ['years_since_work', 'share_holding', 'share_holding_low', 'share_holding_high', 'under_observation'],
        rows: chart.points.map(({ years, share, low, high }) => [years, share, low, high, chart.atRisk(years)]),
      })}
    >
      <Picture drawing={SHARE_CHART} className={styles.chart} chart={chart} />
    </ChartFigure>
  );
}
