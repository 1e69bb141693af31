import { type ReactNode, useState } from 'react';
import styles from './Disclosure.module.css';

type DisclosureProps = {
  readonly summary: string;
  readonly children: ReactNode;
  /** Made only when it is first opened: for what is large. */
  readonly isMadeWhenOpened?: boolean;
};

/** Something that stands folded until it is wanted. */
export function Disclosure({ summary, children, isMadeWhenOpened = false }: DisclosureProps) {
  const [wasOpened, setOpened] = useState(false);
  return (
    <details
      className={styles.details}
      onToggle={(event) => {
        if (event.currentTarget.open) setOpened(true);
      }}
    >
      <summary className={styles.summary}>{summary}</summary>
      <div className={styles.inside}>{(wasOpened || !isMadeWhenOpened) && children}</div>
    </details>
  );
}
