import type { NoteState } from './noteState.ts';
import styles from './StateMark.module.css';

/** The shape that stands for a state: full, half, empty, or struck through. It reads without its colour. */
export function StateMark({ state }: { readonly state: NoteState }) {
  return (
    <svg className={styles.mark} data-state={state} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <rect className={styles.frame} x="1.5" y="1.5" width="13" height="13" />
      {state === 'kept' && <path className={styles.tick} d="M4 8.5l2.8 2.8L12 5.2" />}
      {state === 'doubtful' && <path className={styles.half} d="M1.5 14.5V8.5h13v6z" />}
      {state === 'skipped' && <path className={styles.strike} d="M2 14L14 2" />}
    </svg>
  );
}
