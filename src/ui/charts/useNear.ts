import { type RefObject, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far below or above what is seen: half of it. Nearer, and drawing would be seen; farther, and what nobody looks at would be drawn. Chosen. */
const NEAR = '50% 0px';

const waiting: (() => void)[] = [];

/**
 * True from the moment an element comes near what is seen of the page, and for good. Paper shows all of a page, so that all of it is near
 * when the page is printed.
 */
export function useNear(place: RefObject<Element | null>): boolean {
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    if (isNear || !place.current) return;
    const come = () => flushSync(() => setNear(true));
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) oneAfterAnother(come);
      },
      { rootMargin: NEAR },
    );
    observer.observe(place.current);
    window.addEventListener('beforeprint', come);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', come);
    };
  }, [place, isNear]);
  return isNear;
}

/** Each in a task of its own, so that the page answers between two of them. */
function oneAfterAnother(work: () => void): void {
  waiting.push(work);
  if (waiting.length === 1) setTimeout(doNext);
}

function doNext(): void {
  waiting[0]?.();
  waiting.shift();
  if (waiting.length > 0) setTimeout(doNext);
}
