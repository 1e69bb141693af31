import styles from './ChartSymbol.module.css';

export type ChartSymbolShape = 'disc' | 'triangle' | 'square';

type ChartSymbolProps = {
  readonly shape: ChartSymbolShape;
  readonly x?: number | undefined;
  readonly y?: number | undefined;
};

/** The sign of one reading. The shape tells which series it belongs to, so that colour need not. */
export function ChartSymbol({ shape, x = 0, y = 0 }: ChartSymbolProps) {
  if (shape === 'triangle') return <path className={styles.triangle} d={`M${x} ${y - 5}l4.8 8.4h-9.6z`} />;
  if (shape === 'square') return <rect className={styles.square} x={x - 3.6} y={y - 3.6} width={7.2} height={7.2} />;
  return <circle className={styles.disc} cx={x} cy={y} r={4} />;
}

/** The same sign for the legend. */
export function LegendSymbol({ shape }: { readonly shape: ChartSymbolShape }) {
  return (
    <svg className={styles.legend} viewBox="-8 -8 16 16" aria-hidden="true" focusable="false">
      <ChartSymbol shape={shape} />
    </svg>
  );
}
