import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element in CSS pixels, now and after each change; 0 until it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (!watched) return;
    setWidth(watched.clientWidth);
    const observer = new ResizeObserver(() => setWidth(watched.clientWidth));
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
