/** Nobody reads faster. */
const EVERY_MS = 100;

/** What is told more often than it can be read is not passed on, but for the first time: drawing it costs more than the work it tells of. */
export function seldom<Told>(tell: (told: Told) => void): (told: Told) => void {
  let last = Number.NEGATIVE_INFINITY;
  return (told) => {
    const now = performance.now();
    if (now - last < EVERY_MS) return;
    last = now;
    tell(told);
  };
}
