import type { ReactNode } from 'react';
import { PlainPlot, type PlainPlotProps } from '../../ui/charts/PlainPlot.tsx';
import styles from './method.module.css';

export type LegendEntry = { readonly sign: ReactNode; readonly meaning: string };

type Props = {
  readonly title: string;
  readonly unit: string;
  readonly legend: readonly LegendEntry[];
  readonly plot: PlainPlotProps;
};

/** A picture with its title, unit and the meaning of its signs. */
export function PictureFigure({ title, unit, legend, plot }: Props) {
  return (
    <figure className={styles.figure}>
      <figcaption>
        <p className={styles.title}>{title}</p>
        <p className={styles.legend}>
          {legend.map(({ sign, meaning }) => (
            <span key={meaning}>
              {sign} {meaning}
            </span>
          ))}
        </p>
        <p className={styles.unit}>{unit}</p>
      </figcaption>
      <PlainPlot {...plot} />
    </figure>
  );
}
