import styles from './ChartSymbol.module.css';

export type ChartSymbolShape = 'disc' | 'triangle' | 'square' | 'ring';

/** A name beside a sign, on the side where it runs into nothing. */
export type PointTag = { readonly text: string; readonly stands: 'above' | 'below' | 'beside' };

type ChartSymbolProps = {
  readonly shape: ChartSymbolShape;
  readonly x?: number | undefined;
  readonly y?: number | undefined;
  readonly tag?: PointTag | undefined;
};

/** The sign of one reading. The shape tells which series it belongs to, so that colour need not. */
export function ChartSymbol({ shape, x = 0, y = 0, tag }: ChartSymbolProps) {
  return (
    <g>
      <Sign shape={shape} x={x} y={y} />
      {tag && (
        <text
          className={styles.tag}
          data-stands={tag.stands}
          x={x + TAG_SHIFTS[tag.stands].x}
          y={y + TAG_SHIFTS[tag.stands].y}
        >
          {tag.text}
        </text>
      )}
    </g>
  );
}

const TAG_SHIFTS = { above: { x: 0, y: -12 }, below: { x: 0, y: 21 }, beside: { x: 8, y: 4 } } as const;

type SignProps = { readonly shape: ChartSymbolShape; readonly x: number; readonly y: number };

function Sign({ shape, x, y }: SignProps) {
  if (shape === 'triangle') return <path className={styles.triangle} d={`M${x} ${y - 5}l4.8 8.4h-9.6z`} />;
  if (shape === 'square') return <rect className={styles.square} x={x - 3.6} y={y - 3.6} width={7.2} height={7.2} />;
  if (shape === 'ring') return <circle className={styles.ring} cx={x} cy={y} r={3.2} />;
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

/** A fitted curve and its band, for the legend. */
export function LegendCurve() {
  return (
    <svg className={styles.legend} viewBox="-8 -8 16 16" aria-hidden="true" focusable="false">
      <rect className={styles.band} x={-8} y={-7} width={16} height={14} />
      <path className={styles.curve} d="M-8 0h16" />
    </svg>
  );
}
