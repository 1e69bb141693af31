import type { ReactNode } from 'react';
import styles from './Disclosure.module.css';

/** Something that stands folded until it is wanted. */
export function Disclosure({ summary, children }: { readonly summary: string; readonly children: ReactNode }) {
  return (
    <details className={styles.details}>
      <summary className={styles.summary}>{summary}</summary>
      <div className={styles.inside}>{children}</div>
    </details>
  );
}
