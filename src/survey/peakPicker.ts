/** Picks the peaks of a line of values as they come in. */

export type PeakPicker = {
  /** The value that came `reach` values ago, if it was the largest within reach of it, the first of equals, and at least the least. */
  peak(value: number): number | undefined;
};

export function createPeakPicker(reach: number, least: number): PeakPicker {
  const values = new Array<number>(2 * reach + 1).fill(0);
  return {
    peak(value) {
      values.shift();
      values.push(value);
      const middle = values[reach] ?? 0;
      if (middle < least) return undefined;
      const isPeak = values.every((other, index) => (index < reach ? other < middle : other <= middle));
      return isPeak ? middle : undefined;
    },
  };
}
