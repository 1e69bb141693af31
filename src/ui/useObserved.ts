import { useEffect, useState } from 'react';

export type Observed<Value> =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly value: Value }
  | { readonly state: 'failed'; readonly message: string };

/** Starts to observe and returns how to stop. */
export type Observe<Value> = (onValue: (value: Value) => void, onFault: (fault: unknown) => void) => () => void;

/**
 * What an observed query says now, and again whenever it changes.
 * @param key names what is observed: another key starts another observation
 */
export function useObserved<Value>(key: string, observe: Observe<Value>): Observed<Value> {
  const [seen, setSeen] = useState<{ key: string; observed: Observed<Value> }>({ key, observed: { state: 'loading' } });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the query; `observe` is a new function each time
  useEffect(() => {
    return observe(
      (value) => setSeen({ key, observed: { state: 'ready', value } }),
      (fault) => setSeen({ key, observed: { state: 'failed', message: messageOf(fault) } }),
    );
  }, [key]);
  return seen.key === key ? seen.observed : { state: 'loading' };
}

function messageOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
