import { useEffect } from 'react';

const positions = new Map<string, number>();
let currentKey = '';

/** A new screen opens at its top; going back finds the page where it was left, as soon as it is long enough again. */
export function useScrollMemory(address: string): void {
  useEffect(() => {
    window.history.scrollRestoration = 'manual';
    const remember = () => positions.set(currentKey, window.scrollY);
    window.addEventListener('scroll', remember, { passive: true });
    return () => window.removeEventListener('scroll', remember);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the address stands for the entry of the browser's history
  useEffect(() => {
    const key = entryKey();
    const wanted = positions.get(key) ?? 0;
    currentKey = key;
    return scrollWhenPossible(wanted);
  }, [address]);
}

/** Each entry of the history carries a key of its own, given when it is first seen. */
function entryKey(): string {
  const state: unknown = window.history.state;
  if (typeof state === 'object' && state !== null && 'scrollKey' in state) return String(state.scrollKey);
  const scrollKey = `${Date.now()} ${positions.size}`;
  window.history.replaceState({ scrollKey }, '');
  return scrollKey;
}

/** Records take a moment to be read, and the page is short until then. */
const PATIENCE_MS = 2000;

function scrollWhenPossible(wanted: number): () => void {
  const start = performance.now();
  let request = 0;
  const attempt = () => {
    const reachable = document.documentElement.scrollHeight - window.innerHeight;
    if (reachable >= wanted) window.scrollTo(0, wanted);
    else if (performance.now() - start < PATIENCE_MS) request = requestAnimationFrame(attempt);
  };
  attempt();
  return () => cancelAnimationFrame(request);
}
