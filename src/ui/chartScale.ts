/** Where the ticks of a chart stand: round figures that take in everything, zero always among them. */
import type { Compass } from '../piano/compass.ts';

export type Scale = { readonly low: number; readonly high: number; readonly ticks: readonly number[] };

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

/** The lowest note, every C, and the highest note, where they do not crowd each other (fewer than three notes apart). */
export function noteTicks({ lowestMidi, highestMidi }: Compass): number[] {
  const cs: number[] = [];
  for (let midi = Math.ceil(lowestMidi / 12) * 12; midi <= highestMidi; midi += 12) cs.push(midi);
  const inner = cs.filter((midi) => midi - lowestMidi >= 3 && highestMidi - midi >= 3);
  return [...new Set([lowestMidi, ...inner, highestMidi])];
}
