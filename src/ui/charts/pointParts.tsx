import type { ReactNode } from 'react';
import type { TooltipContentProps } from 'recharts';
import type { ChartSymbolShape, PointTag } from '../ChartSymbol.tsx';
import styles from './pointParts.module.css';

/** `low` and `high` are the ends of the uncertainty bar, in the unit of y. */
export type BarPoint = { readonly x: number; readonly y: number; readonly low: number; readonly high: number };

export type ChartPoint = BarPoint & {
  /** What the box beside the pointer says. */
  readonly detail: string;
  /** Written beside the point, where it must not be overlooked. */
  readonly tag?: PointTag;
};

export type ChartSeries = {
  readonly name: string;
  readonly shape: ChartSymbolShape;
  readonly points: readonly ChartPoint[];
};

export type DrawnPoint = {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
  readonly tag?: PointTag;
};

/** What the box beside the pointer says of the point under it. */
export function pointBox({ active, payload }: TooltipContentProps): ReactNode {
  const detail: unknown = payload[0]?.payload?.detail;
  return active && typeof detail === 'string' ? <div className={styles.box}>{detail}</div> : null;
}
