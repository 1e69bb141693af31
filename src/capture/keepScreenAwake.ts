/** Keeps the screen lit while both hands are at the piano (W3C Screen Wake Lock API). */

/** `asking` until the browser answers; `refused` also where a battery saver takes the light away. */
export type AwakeState = 'asking' | 'held' | 'refused' | 'not-supported';

type Lock = Pick<WakeLockSentinel, 'release' | 'addEventListener'>;
export type AwakePage = {
  readonly wakeLock: { request(kind: 'screen'): Promise<Lock> } | undefined;
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener'>;
};

/** Absent where the browser has none or the page was not loaded securely. */
export function thisPage(): AwakePage {
  return { wakeLock: 'wakeLock' in navigator ? navigator.wakeLock : undefined, document };
}

/**
 * Holds the screen awake until the returned function is called. A hidden page loses its hold (section 9.4 of the standard), so it
 * is asked for again as soon as the page is seen. Nothing throws: a dark screen harms no recording by itself.
 */
export function keepScreenAwake(page: AwakePage, onState: (state: AwakeState) => void): () => void {
  const { wakeLock, document } = page;
  const keeping = new AbortController();
  const { signal } = keeping;
  let held: Lock | undefined;
  const tell = (state: AwakeState) => {
    if (!signal.aborted) onState(state);
  };
  const forget = (lock: Lock) => {
    if (held !== lock) return;
    held = undefined;
    if (document.visibilityState === 'visible') tell('refused');
  };
  const ask = async () => {
    if (held !== undefined || document.visibilityState !== 'visible') return;
    const lock = await wakeLock?.request('screen').catch(() => undefined);
    if (signal.aborted || held !== undefined) return void lock?.release();
    held = lock;
    lock?.addEventListener('release', () => forget(lock), { once: true });
    tell(lock ? 'held' : 'refused');
  };
  if (wakeLock === undefined) {
    tell('not-supported');
    return () => undefined;
  }
  tell('asking');
  void ask();
  document.addEventListener('visibilitychange', () => void ask(), { signal });
  return () => {
    keeping.abort();
    void held?.release();
  };
}
