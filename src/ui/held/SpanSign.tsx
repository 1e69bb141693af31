import styles from './held.module.css';
import type { SpanEnd } from './spanRow.ts';

type SpanSignProps = { readonly end: SpanEnd; readonly x: number; readonly y: number };

/** How a span ends: an open arrow that goes on, a triangle for watch, a full square for giving way. They read without their colours. */
export function SpanSign({ end, x, y }: SpanSignProps) {
  if (end === 'holding') return <path className={styles.goesOn} d={`M${x} ${y - 6}l8 6l-8 6`} />;
  if (end === 'watch') return <path className={styles.watch} d={`M${x} ${y - 7}l7 12h-14z`} />;
  return <rect className={styles.givingWay} x={x - 6} y={y - 6} width={12} height={12} />;
}

export function LegendSpan({ end }: { readonly end: SpanEnd }) {
  return (
    <svg className={styles.legend} viewBox="-10 -8 20 16" aria-hidden="true" focusable="false">
      <SpanSign end={end} x={end === 'holding' ? -4 : 0} y={0} />
    </svg>
  );
}

export function LegendWatched({ isWatched }: { readonly isWatched: boolean }) {
  return (
    <svg className={styles.legend} viewBox="-10 -8 20 16" aria-hidden="true" focusable="false">
      <path className={isWatched ? styles.watched : styles.unwatched} d="M-10 0h20" />
    </svg>
  );
}
