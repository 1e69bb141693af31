import { useSyncExternalStore } from 'react';

/** As the style sheets have it for a telephone. */
const WIDE = '(min-width: 40rem)';

/** Whether there is more room than on a telephone, now and after each change. */
export function useIsWide(): boolean {
  return useSyncExternalStore(onChange, isWide, () => true);
}

function onChange(listener: () => void): () => void {
  const query = window.matchMedia(WIDE);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
}

function isWide(): boolean {
  return window.matchMedia(WIDE).matches;
}
