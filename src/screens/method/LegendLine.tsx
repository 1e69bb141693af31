import styles from './method.module.css';

/** A piece of the line that a legend explains. */
export function LegendLine({ look }: { readonly look: 'measured' | 'fitted' | 'expected' }) {
  return (
    <svg className={styles.sign} data-look={look} viewBox="0 0 28 12" aria-hidden="true" focusable="false">
      <path d="M1 6h26" />
    </svg>
  );
}

/** A column of a column chart. */
export function LegendColumn() {
  return (
    <svg className={styles.sign} data-look="column" viewBox="0 0 28 12" aria-hidden="true" focusable="false">
      <rect x={7} y={1} width={14} height={10} />
    </svg>
  );
}
