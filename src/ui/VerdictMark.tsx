import styles from './VerdictMark.module.css';

export type BlockState = 'holding' | 'watch' | 'giving way' | 'not enough evidence';

/** The shape that stands for a verdict: full with a tick, half, crossed out, or empty. It reads without its colour. */
export function VerdictMark({ state }: { readonly state: BlockState }) {
  return (
    <svg className={styles.mark} data-state={state} viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <rect className={styles.frame} x="2.5" y="2.5" width="27" height="27" />
      {state === 'holding' && <path className={styles.tick} d="M8 17l5.6 5.6L24 10.4" />}
      {state === 'watch' && <path className={styles.half} d="M2.5 29.5V16h27v13.5z" />}
      {state === 'giving way' && <path className={styles.cross} d="M8 8l16 16M24 8L8 24" />}
    </svg>
  );
}
