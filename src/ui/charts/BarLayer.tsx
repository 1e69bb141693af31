import { usePlotArea, useXAxisScale, useYAxisScale } from 'recharts';
import styles from './BarLayer.module.css';
import type { BarPoint } from './pointParts.tsx';

/** Half the width of a bar's ends, in CSS pixels. */
const END = 2;

/** The uncertainty bars of all points in one outline: hundreds of separate ones would make the page slow. */
export function BarLayer({ points }: { readonly points: readonly BarPoint[] }) {
  const xOf = useXAxisScale();
  const yOf = useYAxisScale();
  const area = usePlotArea();
  if (!xOf || !yOf || !area) return null;
  const within = (y: number) => Math.min(Math.max(yOf(y) ?? 0, area.y), area.y + area.height);
  const bars = points
    .filter(({ low, high }) => high > low)
    .map((point) => {
      const x = xOf(point.x) ?? 0;
      const [low, high] = [within(point.low), within(point.high)];
      return `M${x - END} ${high}h${2 * END}M${x} ${high}V${low}M${x - END} ${low}h${2 * END}`;
    });
  return bars.length === 0 ? null : <path className={styles.bars} d={bars.join('')} />;
}
