import { type ReactNode, useId } from 'react';
import styles from './Section.module.css';

type SectionProps = {
  readonly title: string;
  /** A line under the heading, in the margin. */
  readonly note?: ReactNode;
  readonly children: ReactNode;
};

/** A stretch of the page: its heading stands in the margin, as in a notebook, and above the text on a narrow screen. */
export function Section({ title, note, children }: SectionProps) {
  const headingId = useId();
  return (
    <section className={styles.section} aria-labelledby={headingId}>
      <div className={styles.margin}>
        <h2 id={headingId}>{title}</h2>
        {note && <div className={styles.note}>{note}</div>}
      </div>
      <div className={styles.body}>{children}</div>
    </section>
  );
}
