/**
 * How deep a beat is, on a scale on which repeated strikes scatter alike: the amplitude ratio r of its two components, 0 (none) to 1.
 * Peak to trough is 20·log10((1 + r)/(1 − r)) dB, so that r = tanh(depth·ln 10/40) (arithmetic): 3 dB is 0.17, 6 dB 0.33, 12 dB 0.60.
 */
import type { Beat, PartialReading } from '../../piano/reading.ts';

export function depthToRatio(depthDb: number): number {
  return Math.tanh((depthDb * Math.LN10) / 40);
}

export function ratioToDepthDb(ratio: number): number {
  return 20 * Math.log10((1 + ratio) / (1 - Math.min(ratio, 0.999)));
}

/** The deepest beat of a partial; undefined where it has none. */
export function deepestBeat({ beats }: Pick<PartialReading, 'beats'>): Beat | undefined {
  return beats.reduce<Beat | undefined>((a, b) => (a && a.depthDb >= b.depthDb ? a : b), undefined);
}

/** A beat's second component has to stand this much above the noise to be found for sure. Chosen, as its detection asks for 6 sigma. */
const CLEAR_DB = 10;
/** And this much of a beat has to fit into the time that the partial is heard. */
const LEAST_CYCLES = 0.8;

/**
 * Would a beat of this rate and depth have shown on the partial? Only then does its absence say anything. Reckoned from the partial's
 * signal to noise and its decay; the band's noise is at its reading's own start.
 */
export function wouldShow(partial: PartialReading, durationS: number, rateHz: number, ratio: number): boolean {
  const secondDb = partial.snrDb + 20 * Math.log10(Math.max(ratio, 1e-6));
  return secondDb >= CLEAR_DB && rateHz * heardS(partial, durationS) >= LEAST_CYCLES;
}

/** How long a partial stands above its noise, within the take. */
export function heardS(partial: PartialReading, durationS: number): number {
  const decayTimeS = partial.afterDecayTimeS ?? partial.promptDecayTimeS ?? durationS;
  return Math.min(durationS, (decayTimeS * Math.max(partial.snrDb, 0)) / 60);
}
