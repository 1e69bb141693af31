import { type RefObject, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far below or above what is seen: half of it. Chosen: nearer, and drawing would be seen. */
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
    const stopWatching = watchPlace(place.current, () => oneAfterAnother(come));
    window.addEventListener('beforeprint', come);
    return () => {
      stopWatching();
      window.removeEventListener('beforeprint', come);
    };
  }, [place, isNear]);
  return isNear;
}

/** Until somebody moves about on the page, only what is seen counts: the page is there the sooner. */
function watchPlace(place: Element, onNear: () => void): () => void {
  const within = (rootMargin: string) => {
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) onNear();
      },
      { rootMargin },
    );
    observer.observe(place);
    return observer;
  };
  let observer = within('0px');
  const widen = () => {
    observer.disconnect();
    observer = within(NEAR);
  };
  window.addEventListener('scroll', widen, { once: true, passive: true });
  return () => {
    observer.disconnect();
    window.removeEventListener('scroll', widen);
  };
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
