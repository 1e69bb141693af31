import { type ReactNode, useContext, useId, useLayoutEffect } from 'react';
import { PagePartsContext } from './pagePartsContext.ts';
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
  const addPart = useContext(PagePartsContext);
  // Before the page is painted, so that the list of its parts moves nothing.
  useLayoutEffect(() => addPart?.({ headingId, title }), [addPart, headingId, title]);
  return (
    <section className={styles.section} aria-labelledby={headingId}>
      <div className={styles.margin}>
        <h2 id={headingId} tabIndex={addPart ? -1 : undefined}>
          {title}
        </h2>
        {note && <div className={styles.note}>{note}</div>}
      </div>
      <div className={styles.body}>{children}</div>
    </section>
  );
}
