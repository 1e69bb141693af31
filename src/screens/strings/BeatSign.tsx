import type { Audibility } from './audibility.ts';
import styles from './BeatSign.module.css';

type SignProps = { readonly audibility: Audibility; readonly x?: number; readonly y?: number; readonly size?: number };

/** The sign of a string's beat: by its shape, so that colour need not tell. A string that was not recorded has none. */
export function BeatShape({ audibility, x = 0, y = 0, size = 8 }: SignProps) {
  const half = size / 2;
  switch (audibility) {
    case 'plain':
      return <path className={styles.plain} d={`M${x} ${y - half}l${half} ${size}h${-size}z`} />;
    case 'faint':
      return <path className={styles.faint} d={`M${x} ${y - half}l${half} ${size}h${-size}z`} />;
    case 'hardly':
      return <path className={styles.faint} d={`M${x - half} ${y + half}h${size}`} />;
    case 'none':
      return <circle className={styles.none} cx={x} cy={y} r={size / 5} />;
    case 'undecided':
      return (
        <path className={styles.undecided} d={`M${x - half} ${y - half}l${size} ${size}m0 ${-size}l${-size} ${size}`} />
      );
    case 'missing':
      return null;
  }
}

/** The same within text. */
export function BeatSign({ audibility }: { readonly audibility: Audibility }) {
  return (
    <svg className={styles.sign} viewBox="-8 -8 16 16" aria-hidden="true" focusable="false">
      <BeatShape audibility={audibility} size={11} />
    </svg>
  );
}
