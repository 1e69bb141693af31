/** Round figures for an axis. */

export type Ticks = {
  readonly low: number;
  readonly high: number;
  readonly values: readonly number[];
  readonly step: number;
};

/**
 * Steps of 1, 2 or 5 times a power of ten that take in all values.
 * @param values at least one, finite
 * @param mostSteps about so many steps, never more
 * @example roundTicks([-6.9, 7.9], 6).values // [-10, -5, 0, 5, 10]
 */
export function roundTicks(values: readonly number[], mostSteps: number): Ticks {
  const lowest = Math.min(...values);
  const highest = Math.max(...values);
  const span = Math.max(highest - lowest, 1e-9);
  const power = 10 ** Math.floor(Math.log10(span / mostSteps));
  const step =
    [1, 2, 5, 10, 20].map((factor) => factor * power).find((one) => stepsOf(lowest, highest, one) <= mostSteps) ??
    20 * power;
  const first = Math.floor(lowest / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(highest / step - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => tidy((first + index) * step));
  return { low: tidy(first * step), high: tidy(last * step), values: ticks, step: tidy(step) };
}

function stepsOf(lowest: number, highest: number, step: number): number {
  return Math.ceil(highest / step - 1e-9) - Math.floor(lowest / step + 1e-9);
}

function tidy(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}
