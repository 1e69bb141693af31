/**
 * Beats inside one partial: two damped sinusoids at different frequencies whose sum swells and sinks.
 *
 * Rate is the difference of the two frequencies; depth is peak to trough of the envelope with the decay taken out,
 * 20·log10((1 + r)/(1 − r)) for an amplitude ratio r (common practice, from the sum of two phasors). The ratio changes with time
 * where the two decay differently, so it is taken at the middle of the partial's energy.
 */
import type { Beat } from '../../piano/reading.ts';
import type { FittedComponent, PartialFit } from './partialFit.ts';

/** A beat shallower than this is hardly heard (amplitude modulation is first heard at about 0.9 dB peak to trough). */
const LEAST_DEPTH_DB = 1.5;
/** While the weaker component stays within this of the stronger, the beat can be seen. */
const OVERLAP_DB = 20;
/** Less of a beat than this within the overlap is a bend in the decay, not a beat… */
const LEAST_CYCLES = 0.5;
/** …unless it is deep and its rate beyond doubt. */
const LEAST_CYCLES_IF_CERTAIN = 0.2;
const CERTAIN_SIGNIFICANCE = 12;
const CERTAIN_DEPTH_DB = 2.5;
/** The rate has to be this many standard uncertainties away from zero. */
const LEAST_SIGNIFICANCE = 4;
const DEEPEST_DB = 40;
/** Faster than this it is heard as roughness, and no unison and no false beat is (common practice). */
const FASTEST_HZ = 16;

/** Beats between the partial's main component and each other one, deepest first. Empty where there is none. */
export function beatsOf(partial: PartialFit): Beat[] {
  const [main, ...others] = partial.components;
  if (!main) return [];
  const beats = others.flatMap((other, index) => {
    const rateHz = Math.abs(other.hz - main.hz);
    const rateStandardUncertaintyHz = rateUncertaintyHz(partial, index + 1);
    const depthDb = depthOf(main, other, middleOfEnergyS(partial));
    const cycles = rateHz * overlapS(main, other, partial.audibleS);
    const significance = rateHz / rateStandardUncertaintyHz;
    const isCertain = significance > CERTAIN_SIGNIFICANCE && depthDb > CERTAIN_DEPTH_DB;
    const isBeat =
      depthDb >= LEAST_DEPTH_DB &&
      rateHz <= FASTEST_HZ &&
      cycles >= (isCertain ? LEAST_CYCLES_IF_CERTAIN : LEAST_CYCLES) &&
      significance > LEAST_SIGNIFICANCE &&
      other.relativeUncertainty < 0.35;
    return isBeat ? [{ rateHz, rateStandardUncertaintyHz, depthDb }] : [];
  });
  return beats.sort((a, b) => b.depthDb - a.depthDb);
}

/** Uncertainty of the difference between the main component's frequency and another's. */
export function rateUncertaintyHz(partial: PartialFit, index: number): number {
  const { covarianceHz } = partial;
  const variance = covarianceHz[0]![0]! + covarianceHz[index]![index]! - 2 * covarianceHz[0]![index]!;
  return Math.sqrt(Math.max(variance, 0));
}

/** Amplitude ratio of two components at a time, the smaller over the larger. */
function ratioAt(a: FittedComponent, b: FittedComponent, timeS: number): number {
  const ratio = (b.amplitude / a.amplitude) * Math.exp((a.dampingPerS - b.dampingPerS) * timeS);
  return ratio > 1 ? 1 / ratio : ratio;
}

function depthOf(a: FittedComponent, b: FittedComponent, timeS: number): number {
  const ratio = ratioAt(a, b, timeS);
  return Math.min(DEEPEST_DB, 20 * Math.log10((1 + ratio) / Math.max(1e-9, 1 - ratio)));
}

/** Mean time of the partial's energy within what was recorded. */
function middleOfEnergyS(partial: PartialFit): number {
  let energy = 0;
  let moment = 0;
  for (const component of partial.components) {
    const rate = 2 * Math.max(component.dampingPerS, 1e-3);
    const decayed = Math.exp(-rate * partial.audibleS);
    const own = (component.amplitude ** 2 * (1 - decayed)) / rate;
    energy += own;
    moment += own * (1 / rate - (partial.audibleS * decayed) / (1 - decayed));
  }
  return energy > 0 ? moment / energy : 0;
}

/** How long the two stay within OVERLAP_DB of each other, from the start to the end of what was recorded. */
function overlapS(a: FittedComponent, b: FittedComponent, audibleS: number): number {
  const startDb = 20 * Math.log10(b.amplitude / a.amplitude);
  const slopeDbPerS = 8.686 * (a.dampingPerS - b.dampingPerS);
  if (Math.abs(slopeDbPerS) < 1e-9) return Math.abs(startDb) < OVERLAP_DB ? audibleS : 0;
  const crossings = [(-OVERLAP_DB - startDb) / slopeDbPerS, (OVERLAP_DB - startDb) / slopeDbPerS].sort((x, y) => x - y);
  return Math.max(0, Math.min(audibleS, crossings[1]!) - Math.max(0, crossings[0]!));
}

/**
 * The smallest amplitude ratio of a second component, `rateHz` away, that the record would have shown with certainty (six standard
 * deviations).
 *
 * A second exponential beside one whose frequency, damping and amplitude are all fitted keeps the share (x²/(1 + x²))² of its energy
 * to itself, x = π·rate/damping (its expansion in Laguerre functions, the first two of which the first component takes).
 */
export function visibleRatio(partial: PartialFit, rateHz: number): number {
  const main = partial.components[0]!;
  const damping = Math.max(main.dampingPerS, 0) + 0.8 / partial.audibleS;
  const x2 = ((Math.PI * rateHz) / damping) ** 2;
  const own = (x2 / (1 + x2)) ** 2;
  const energy = (main.amplitude ** 2 * partial.sampleRateHz) / (2 * damping);
  return 6 * Math.sqrt((2 * partial.noiseRms ** 2) / (energy * own));
}
