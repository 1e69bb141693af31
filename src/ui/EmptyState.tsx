import type { ReactNode } from 'react';
import styles from './EmptyState.module.css';

/** What stands where nothing is yet: what belongs here, and the next step. */
export function EmptyState({ children, actions }: { readonly children: ReactNode; readonly actions?: ReactNode }) {
  return (
    <div className={styles.empty}>
      <div>{children}</div>
      {actions && <div className={styles.actions}>{actions}</div>}
    </div>
  );
}
