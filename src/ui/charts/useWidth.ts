import { type RefObject, useLayoutEffect, useState } from 'react';
import { useNear } from './useNear.ts';

/** Width of an element in CSS pixels, now and after each change; 0 until it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  return useWidthWhen(true, element);
}

/** The same, 0 until the element comes near what is seen of the page: before, nothing of it need be drawn. It must keep its height itself. */
export function useWidthWhenNear(element: RefObject<HTMLElement | null>): number {
  return useWidthWhen(useNear(element), element);
}

function useWidthWhen(isAsked: boolean, element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (!isAsked || !watched) return;
    setWidth(watched.clientWidth);
    const observer = new ResizeObserver(() => setWidth(watched.clientWidth));
    observer.observe(watched);
    return () => observer.disconnect();
  }, [isAsked, element]);
  return width;
}
