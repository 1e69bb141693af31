import type { CsvSheet } from '../../files/csvTable.ts';
import { LegendCurve, LegendSymbol } from '../ChartSymbol.tsx';
import { fetchedOnce } from '../fetchedOnce.ts';
import { ChartFigure, type LegendItem } from './ChartFigure.tsx';
import { Picture } from './Picture.tsx';
import type { TimeChartProps } from './TimeChart.tsx';
import styles from './TimeFigure.module.css';

const TIME_CHART = fetchedOnce(async () => (await import('./TimeChart.tsx')).TimeChart);

type TimeFigureProps = {
  readonly name: string;
  readonly title: string;
  /** One below the other, over the same years. */
  readonly charts: readonly TimeChartProps[];
  readonly sheet: () => CsvSheet;
};

/** One or more charts over the years, with what their signs mean. */
export function TimeFigure({ name, title, charts, sheet }: TimeFigureProps) {
  return (
    <ChartFigure name={name} title={title} legend={legendOf(charts)} sheet={sheet}>
      {charts.map((chart) => (
        <Picture
          drawing={TIME_CHART}
          key={chart.summary}
          className={chart.isLow ? styles.low : styles.drawing}
          chart={chart}
        />
      ))}
    </ChartFigure>
  );
}

function legendOf(charts: readonly TimeChartProps[]): LegendItem[] {
  return charts.flatMap(({ series, curve }) => {
    const signs = series.map(({ name, shape }) => ({
      key: name,
      sign: <LegendSymbol shape={shape} />,
      meaning: name,
    }));
    return curve ? [...signs, { key: curve.name, sign: <LegendCurve />, meaning: curve.name }] : signs;
  });
}
