import { useEffect, useState } from 'react';

export type WorkedOut<Value> =
  | { readonly state: 'working' }
  | { readonly state: 'ready'; readonly value: Value }
  | { readonly state: 'failed'; readonly detail: string };

/** Works something out once, when the part of the page that shows it is first there. @param work always the same function */
export function useWorkedOut<Value>(work: () => Promise<Value>): WorkedOut<Value> {
  const [outcome, setOutcome] = useState<WorkedOut<Value>>({ state: 'working' });
  useEffect(() => {
    let isShown = true;
    work().then(
      (value) => isShown && setOutcome({ state: 'ready', value }),
      (error: unknown) =>
        isShown && setOutcome({ state: 'failed', detail: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isShown = false;
    };
  }, [work]);
  return outcome;
}
