import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';
import styles from './ChartSymbol.module.css';

/** A curve along the compass and the band about it, in stretches: it may break between two notes. */
export type NoteCurve = {
  /** What the line and its band are, for the legend. */
  readonly name: string;
  readonly stretches: readonly (readonly CurveNote[])[];
};

export type CurveNote = { readonly x: number; readonly y: number; readonly low: number; readonly high: number };

/** Drawn under the points, cut off at the edge of the chart. */
export function NoteCurveLayer({ curve }: { readonly curve: NoteCurve }) {
  const xOf = useXAxisScale();
  const yOf = useYAxisScale();
  const area = usePlotArea();
  if (!xOf || !yOf || !area) return null;
  const at = (x: number, y: number): string => `${xOf(x)} ${clamp(yOf(y) ?? 0, area.y, area.y + area.height)}`;
  return (
    <g>
      {curve.stretches.map((notes) => {
        const up = notes.map(({ x, high }) => at(x, high));
        const down = notes.map(({ x, low }) => at(x, low)).reverse();
        return (
          <g key={notes[0]?.x}>
            <path className={styles.band} d={`M${[...up, ...down].join('L')}z`} />
            <path className={styles.curve} d={`M${notes.map(({ x, y }) => at(x, y)).join('L')}`} />
          </g>
        );
      })}
    </g>
  );
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
