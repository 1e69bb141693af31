import type { ReactNode } from 'react';
import styles from './Notice.module.css';

export type NoticeKind = 'note' | 'caution' | 'fault';

type NoticeProps = {
  readonly kind: NoticeKind;
  /** The word that says what kind of notice it is; colour alone does not. */
  readonly word: string;
  readonly children: ReactNode;
  /** Whether a screen reader should be told at once. */
  readonly isUrgent?: boolean;
};

const SIGNS: Record<NoticeKind, string> = { note: '¶', caution: '△', fault: '✕' };

export function Notice({ kind, word, children, isUrgent }: NoticeProps) {
  return (
    <div className={styles.notice} data-kind={kind} role={isUrgent ? 'alert' : undefined}>
      <span className={styles.sign} aria-hidden="true">
        {SIGNS[kind]}
      </span>
      <div className={styles.text}>
        <strong>{word}</strong> {children}
      </div>
    </div>
  );
}
