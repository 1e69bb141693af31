import { startTransition, useEffect, useState } from 'react';

export type Observed<Value> =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly value: Value }
  | { readonly state: 'failed'; readonly message: string };

/** Starts to observe and returns how to stop. */
export type Observe<Value> = (onValue: (value: Value) => void, onFault: (fault: unknown) => void) => () => void;

/**
 * What an observed query says now, and again whenever it changes. A page that was waiting for it is drawn in short steps, so that it
 * answers meanwhile.
 * @param key names what is observed: another key starts another observation
 */
export function useObserved<Value>(key: string, observe: Observe<Value>): Observed<Value> {
  const [seen, setSeen] = useState<{ key: string; observed: Observed<Value> }>({ key, observed: { state: 'loading' } });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the query; `observe` is a new function each time
  useEffect(() => {
    let show: (update: () => void) => void = startTransition;
    return observe(
      (value) => {
        show(() => setSeen({ key, observed: { state: 'ready', value } }));
        show = atOnce;
      },
      (fault) => setSeen({ key, observed: { state: 'failed', message: messageOf(fault) } }),
    );
  }, [key]);
  return seen.key === key ? seen.observed : { state: 'loading' };
}

function atOnce(update: () => void): void {
  update();
}

function messageOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
