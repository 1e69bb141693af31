import { type ReactNode, useCallback, useState } from 'react';
import styles from './PageParts.module.css';
import { type PagePart, PagePartsContext } from './pagePartsContext.ts';
import { texts } from './texts.ts';

/** Fewer parts are seen at a glance. Chosen. */
const FEWEST = 3;

/** A long page: its sections, with a short list at the top that leads to each of them. */
export function PageParts({ children }: { readonly children: ReactNode }) {
  const [parts, setParts] = useState<readonly PagePart[]>([]);
  const add = useCallback((part: PagePart) => {
    setParts((before) => [...before, part].sort(inPageOrder));
    return () => setParts((before) => before.filter(({ headingId }) => headingId !== part.headingId));
  }, []);
  return (
    <PagePartsContext value={add}>
      {parts.length >= FEWEST && (
        <nav className={styles.parts} aria-label={texts.common.onThisPage}>
          <ul>
            {parts.map(({ headingId, title }) => (
              <li key={headingId}>
                <button type="button" onClick={() => goToPart(headingId)}>
                  {title}
                </button>
              </li>
            ))}
          </ul>
        </nav>
      )}
      {children}
    </PagePartsContext>
  );
}

/** The part comes to the top and its heading has the focus: keys go on from there. The address names the screen alone and stays. */
function goToPart(headingId: string): void {
  const heading = document.getElementById(headingId);
  heading?.closest('section')?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

function inPageOrder(a: PagePart, b: PagePart): number {
  const [first, second] = [document.getElementById(a.headingId), document.getElementById(b.headingId)];
  if (!first || !second) return 0;
  return first.compareDocumentPosition(second) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1;
}
