import { type ReactNode, useCallback, useState } from 'react';
import { Disclosure } from './Disclosure.tsx';
import styles from './PageParts.module.css';
import { type PagePart, PagePartsContext } from './pagePartsContext.ts';
import { texts } from './texts.ts';
import { useIsWide } from './useIsWide.ts';

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
      {parts.length >= FEWEST && <PartList parts={parts} />}
      {children}
    </PagePartsContext>
  );
}

/** Folded on a telephone, where it would push what the page is about out of sight. */
function PartList({ parts }: { readonly parts: readonly PagePart[] }) {
  const isWide = useIsWide();
  const list = (
    <ul>
      {parts.map(({ headingId, title }) => (
        <li key={headingId}>
          <button type="button" onClick={() => goToPart(headingId)}>
            {title}
          </button>
        </li>
      ))}
    </ul>
  );
  return (
    <nav className={styles.parts} aria-label={texts.common.onThisPage}>
      {isWide ? list : <Disclosure summary={texts.common.onThisPage}>{list}</Disclosure>}
    </nav>
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
