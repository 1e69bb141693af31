import type { ReactNode } from 'react';
import styles from './KeyHints.module.css';

/** What keys do; not shown where a finger is all there is. */
export function KeyHints({ children }: { readonly children: ReactNode }) {
  return <div className={styles.keys}>{children}</div>;
}
