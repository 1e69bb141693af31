/**
 * Writes the newest version of something, one write after another: what changes while a write is under way goes with the next one, and
 * nothing waits for a timer. What could not be written is kept and tried again with the next change, or when asked.
 */

type Outcome<Failure> = { readonly written: true } | ({ readonly written: false } & Failure);

export type WriterState<Failure> =
  | { readonly kind: 'saved' }
  | { readonly kind: 'writing' }
  | { readonly kind: 'failed'; readonly failure: Failure };

export type LatestWriter<Value, Failure> = {
  readonly put: (value: Value) => void;
  readonly tryAgain: () => void;
  /** Null once everything is written. */
  readonly unsaved: () => Value | null;
  readonly state: () => WriterState<Failure>;
  readonly onChange: (listener: () => void) => () => void;
};

/** @param write has to give its failures as values, as the records do; one that is thrown is passed on */
export function createLatestWriter<Value, Failure>(
  write: (value: Value) => Promise<Outcome<Failure>>,
): LatestWriter<Value, Failure> {
  let waiting: { readonly value: Value } | null = null;
  let isWriting = false;
  let state: WriterState<Failure> = { kind: 'saved' };
  const listeners = new Set<() => void>();
  const tell = (next: WriterState<Failure>) => {
    state = next;
    for (const listener of listeners) listener();
  };
  const go = async () => {
    if (isWriting || !waiting) return;
    const current = waiting;
    isWriting = true;
    tell({ kind: 'writing' });
    const outcome = await write(current.value).finally(() => {
      isWriting = false;
    });
    const isNewest = waiting === current;
    if (outcome.written && isNewest) waiting = null;
    if (!isNewest) return void go();
    tell(outcome.written ? { kind: 'saved' } : { kind: 'failed', failure: outcome });
  };
  return {
    put: (value) => {
      waiting = { value };
      void go();
    },
    tryAgain: () => void go(),
    unsaved: () => waiting?.value ?? null,
    state: () => state,
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
