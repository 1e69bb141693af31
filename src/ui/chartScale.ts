/** Where the ticks of a chart stand: round figures that take in everything. */
import type { Compass } from '../piano/compass.ts';

export type Scale = {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Equal steps are equal ratios. */
  readonly isLog?: boolean;
};

const WANTED_STEPS = 6;

/**
 * A scale with steps of 1, 2 or 5 times a power of ten that holds all values and zero.
 * @example roundScale([-3.2, 4.4]).ticks // [-4, -2, 0, 2, 4, 6]
 */
export function roundScale(values: readonly number[], leastSpan = 2): Scale {
  const lowest = Math.min(0, ...values);
  const highest = Math.max(0, ...values);
  const lacking = Math.max(0, leastSpan - (highest - lowest)) / 2;
  const step = roundStep((highest - lowest + 2 * lacking) / WANTED_STEPS);
  const first = Math.floor((lowest - lacking) / step);
  const last = Math.ceil((highest + lacking) / step);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => tidy((first + index) * step));
  return { low: tidy(first * step), high: tidy(last * step), ticks };
}

function roundStep(leastStep: number): number {
  const power = 10 ** Math.floor(Math.log10(leastStep));
  const share = leastStep / power;
  const factor = [1, 2, 5].find((candidate) => share <= candidate * (1 + 1e-9)) ?? 10;
  return factor * power;
}

/** Takes away the dust of binary fractions, and the sign of a negative zero. */
function tidy(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}

/** More decades than this have a tick at powers of ten only. */
const MOST_DECADES_WITH_STEPS = 3.4;

/**
 * A logarithmic scale with ticks at 1, 2 and 5 times powers of ten that holds all values.
 * @param values above zero, at least one
 * @throws {RangeError} if there is none, or one is not a finite number above zero
 * @example logScale([0.3, 7]).ticks // [0.2, 0.5, 1, 2, 5, 10]
 */
export function logScale(values: readonly number[]): Scale {
  const lowest = Math.min(...values);
  const highest = Math.max(...values);
  if (!(lowest > 0 && lowest <= highest && highest < Number.POSITIVE_INFINITY))
    throw new RangeError(`values must be finite and above zero, got ${lowest} to ${highest}`);
  const factors = Math.log10(highest / lowest) > MOST_DECADES_WITH_STEPS ? [1] : [1, 2, 5];
  const powers = Array.from({ length: 41 }, (_, index) => index - 20);
  const round = powers.flatMap((power) => factors.map((factor) => tidy(factor * 10 ** power)));
  const first = round.findLastIndex((value) => value <= lowest);
  const last = round.findIndex((value) => value >= highest);
  const ticks = round.slice(first, Math.max(last, first + 1) + 1);
  return { low: ticks[0] ?? lowest, high: ticks.at(-1) ?? highest, ticks, isLog: true };
}

/** The lowest note, every C, and the highest note, where they do not crowd each other (fewer than three notes apart). */
export function noteTicks({ lowestMidi, highestMidi }: Compass): number[] {
  const cs: number[] = [];
  for (let midi = Math.ceil(lowestMidi / 12) * 12; midi <= highestMidi; midi += 12) cs.push(midi);
  const inner = cs.filter((midi) => midi - lowestMidi >= 3 && highestMidi - midi >= 3);
  return [...new Set([lowestMidi, ...inner, highestMidi])];
}
