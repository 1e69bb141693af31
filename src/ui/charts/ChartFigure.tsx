import { type ReactNode, useRef } from 'react';
import type { CsvSheet } from '../../files/csvTable.ts';
import { ExportBar, pageSubject } from '../chartExport/ExportBar.tsx';
import styles from './ChartFigure.module.css';

export type LegendItem = { readonly key: string; readonly sign: ReactNode; readonly meaning: string };

type ChartFigureProps = {
  /** What the chart is called, for the names of its files. */
  readonly name: string;
  /** What is drawn, and its unit. */
  readonly title: string;
  readonly legend?: readonly LegendItem[];
  /** The numbers behind the drawing. */
  readonly sheet: () => CsvSheet;
  readonly children: ReactNode;
};

/** A chart with its title, the meaning of its signs, and the ways to take it along. */
export function ChartFigure({ name, title, legend = [], sheet, children }: ChartFigureProps) {
  const drawing = useRef<HTMLDivElement>(null);
  const signs = useRef<HTMLSpanElement>(null);
  const chart = () => {
    if (!drawing.current?.querySelector('svg')) return null;
    const items = [...(signs.current?.children ?? [])].filter((item) => item instanceof HTMLElement);
    return { drawing: drawing.current, legend: items, title, origin: pageSubject() };
  };
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.title}>
        {title}
        {legend.length > 0 && (
          <span className={styles.legend} ref={signs}>
            {legend.map(({ key, sign, meaning }) => (
              <span key={key}>
                {sign} {meaning}
              </span>
            ))}
          </span>
        )}
      </figcaption>
      <div ref={drawing}>{children}</div>
      <ExportBar name={name} sheet={sheet} chart={chart} />
    </figure>
  );
}
