import { useCallback, useRef } from 'react';

/** The same function all the time, which calls the newest one: what takes it need not be drawn anew. */
export function useSteady<Args extends readonly unknown[]>(newest: (...args: Args) => void): (...args: Args) => void {
  const latest = useRef(newest);
  latest.current = newest;
  return useCallback((...args: Args) => latest.current(...args), []);
}
