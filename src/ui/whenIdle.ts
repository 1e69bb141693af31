/** Where the browser does not tell when it is idle: time enough for the page to be drawn. */
const DRAWN_MS = 500;

/** Does something once the page has nothing more to do; gives how to leave it. */
export function whenIdle(work: () => void): () => void {
  if ('requestIdleCallback' in window) {
    const number = window.requestIdleCallback(work);
    return () => window.cancelIdleCallback(number);
  }
  const number = globalThis.setTimeout(work, DRAWN_MS);
  return () => globalThis.clearTimeout(number);
}
