import styles from './SquareSign.module.css';

export type Sign = 'tick' | 'half' | 'cross' | 'strike' | 'empty' | 'open';

/** A square that stands for a state: full with a tick, half, crossed out, struck through, empty, or of broken lines. It reads without its colour. */
export function SquareSign({ sign }: { readonly sign: Sign }) {
  return (
    <svg className={styles.square} data-sign={sign} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <rect className={styles.frame} x="1.5" y="1.5" width="13" height="13" />
      {sign === 'tick' && <path className={styles.tick} d="M4 8.5l2.8 2.8L12 5.2" />}
      {sign === 'half' && <path className={styles.half} d="M1.5 14.5V8.5h13v6z" />}
      {sign === 'cross' && <path className={styles.cross} d="M4 4l8 8M12 4l-8 8" />}
      {sign === 'strike' && <path className={styles.strike} d="M2 14L14 2" />}
    </svg>
  );
}
