/** What a room and a blow add to a tone. */
import type { SeededRandom } from './seededRandom.ts';

/** Noise with an RMS of 1 on average: white, or pink (equal power per octave; stacked held values after R. F. Voss). */
export function noiseSource(random: SeededRandom, isPink: boolean): () => number {
  return isPink ? pinkSource(random) : random.normal;
}

function pinkSource(random: SeededRandom): () => number {
  const rows = Float64Array.from({ length: PINK_ROWS }, random.normal);
  const scale = 1 / Math.sqrt(PINK_ROWS + 1);
  let sum = rows.reduce((total, row) => total + row, 0);
  let count = 0;
  return () => {
    count = (count + 1) >>> 0;
    const row = Math.min(PINK_ROWS - 1, Math.clz32(count & -count) ^ 31);
    const fresh = random.normal();
    sum += fresh - rows[row]!;
    rows[row] = fresh;
    return (sum + random.normal()) * scale;
  };
}

const PINK_ROWS = 15;

export type HumSpec = { readonly hz: number /** dBFS of the lowest component. */; readonly levelDb: number };

/** Mains hum: the frequency itself, twice and three times it, each 6 dB weaker than the one before. */
export function addHum(out: Float64Array, sampleRateHz: number, hum: HumSpec, random: SeededRandom): void {
  for (const [order, amplitude] of [1, 0.5, 0.25].entries()) {
    const phase = 2 * Math.PI * random.uniform();
    const step = (2 * Math.PI * hum.hz * (order + 1)) / sampleRateHz;
    const scale = amplitude * 10 ** (hum.levelDb / 20);
    for (let index = 0; index < out.length; index += 1) out[index]! += scale * Math.cos(phase + step * index);
  }
}

export type BurstSpec = {
  readonly startIndex: number;
  readonly peak: number;
  /** Time constant of the burst's decay. */
  readonly fadeS: number;
  /** One-pole low-pass that makes the burst dull. */
  readonly cornerHz: number;
};

/** A knock, or the noise of a blow: low-passed noise that fades. Its largest sample is `peak`. */
export function addBurst(out: Float64Array, sampleRateHz: number, burst: BurstSpec, random: SeededRandom): void {
  const length = Math.max(0, Math.min(out.length - burst.startIndex, Math.ceil(8 * burst.fadeS * sampleRateHz)));
  const mix = 1 - Math.exp((-2 * Math.PI * burst.cornerHz) / sampleRateHz);
  let held = 0;
  const shape = Float64Array.from({ length }, (_, index) => {
    held += mix * (random.normal() - held);
    return held * Math.exp(-index / (burst.fadeS * sampleRateHz));
  });
  const largest = shape.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  for (let index = 0; index < length; index += 1)
    out[burst.startIndex + index]! += (shape[index]! * burst.peak) / largest;
}
