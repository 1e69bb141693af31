/** Whether a string went flat again and again, or just once. */

export type OwnChange = { readonly years: number; readonly cents: number; readonly sigmaCents: number };

/**
 * How many standard deviations the rate stands below nought when the change that speaks most for a slip is left out. Nought with
 * fewer than three changes.
 */
export function repetition(changes: readonly OwnChange[]): number {
  if (changes.length < 3) return 0;
  const share = ({ years, cents, sigmaCents }: OwnChange) => (years * cents) / sigmaCents ** 2;
  const strongest = changes.reduce((a, b) => (share(b) < share(a) ? b : a));
  let top = 0;
  let information = 0;
  for (const change of changes) {
    if (change === strongest) continue;
    top += share(change);
    information += change.years ** 2 / change.sigmaCents ** 2;
  }
  return information > 0 ? -top / Math.sqrt(information) : 0;
}
