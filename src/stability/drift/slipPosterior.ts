/**
 * Which strings slip by themselves: a mixture of steady strings and a few that only go flat.
 *
 * rate_i = common course + slip_i + noise. The common course is a constant with a step and slopes that are held as small as the
 * intervals show them to be; slip_i is nought for most strings and negative, of the order of a cent or two a year, for a few.
 * Each string's probability is the posterior of belonging to the few (a two-groups model, B. Efron, Statist. Sci. 23 (2008) 1–22);
 * the course is fitted with the others only.
 */

import { solveRidge } from './ridge.ts';
import { median, normalBelow, normalDensity, robustDeviation } from './statistics.ts';
import { type StringRate, scatterFactor } from './stringRates.ts';

export type Slip = {
  readonly centsPerYear: number | null;
  readonly standardUncertainty: number | null;
  readonly probability: number | null;
};

export type SlipFit = {
  readonly slips: readonly Slip[];
  /** The common course at each string. */
  readonly course: Float64Array;
  /** Strings' own rates over their noise, steady ones near a standard normal. */
  readonly standardised: Float64Array;
};

/**
 * How many strings slip, before an instrument's own are known: as if half a string in a hundred had been seen to. The share is
 * learnt with the rest (empirical Bayes), so that a steady piano's many strings do not raise a false alarm by their number.
 */
const SEEN_SLIPPING = 0.5;
const SEEN_STRINGS = 100;
/** Mean slip of those that do, cents a year. */
const MEAN_SLIP = 1.6;
/** A slip repeats itself: with fewer changes nothing is learnt of a string. */
const LEAST_CHANGES = 3;
const TURNS = 12;

export type SlipRequest = {
  readonly rates: readonly StringRate[];
  readonly shapes: readonly Float64Array[];
  /** Standard deviation of each shape's steady part, cents a year. */
  readonly shapeDeviations: readonly number[];
  /** Prior probability of each string, where a failing zone raises it; 0 elsewhere, where the learnt share holds. */
  readonly prior?: Float64Array;
};

export function fitSlips(request: SlipRequest): SlipFit {
  const { rates, shapes } = request;
  const known = rates.map((_, i) => i).filter((i) => rates[i]!.centsPerYear !== null);
  const probability = new Float64Array(rates.length);
  let course = new Float64Array(rates.length).fill(median(known.map((i) => rates[i]!.centsPerYear!)));
  let factor = 1;
  let share = SEEN_SLIPPING / SEEN_STRINGS;
  for (let turn = 0; turn < TURNS; turn++) {
    const off = known.map((i) => (rates[i]!.centsPerYear! - course[i]!) / rates[i]!.standardUncertainty);
    factor = scatterFactor(off);
    const strays = findStrays(off.map((value) => value / factor));
    for (const i of known) {
      const sigma = factor * rates[i]!.standardUncertainty;
      const prior = Math.max(share, request.prior?.[i] ?? 0);
      const isRepeated = rates[i]!.changeCount >= LEAST_CHANGES;
      probability[i] = isRepeated ? slipProbability(rates[i]!.centsPerYear! - course[i]!, sigma, prior, strays) : prior;
    }
    share = learntShare(
      known.filter((i) => !request.prior?.[i]),
      probability,
    );
    course = commonCourse(request, known, probability, factor, shapes);
  }
  return describe(rates, course, probability, factor);
}

function learntShare(known: readonly number[], probability: Float64Array): number {
  const slipping = known.reduce((sum, i) => sum + probability[i]!, 0);
  return (SEEN_SLIPPING + slipping) / (SEEN_STRINGS + known.length);
}

/** Posterior probability of slipping, from the rate beyond the common course. The steady ones have heavier tails than normal. */
export function slipProbability(rate: number, sigma: number, prior: number, strays: Strays): number {
  const steady = steadyDensity(rate / sigma, strays) / sigma;
  const slipping = exponentialBelow(rate, sigma);
  const odds = (prior * slipping) / Math.max((1 - prior) * steady, 1e-300);
  return odds / (1 + odds);
}

/** Steady strings whose rates stray further than their uncertainties say: their share, and how much further. */
export type Strays = { readonly share: number; readonly factor: number };

const STRAY_SHARES = [0.002, 0.01, 0.03, 0.08, 0.15];
const STRAY_FACTORS = [1.5, 2, 2.5, 3.5];

function steadyDensity(z: number, { share, factor }: Strays): number {
  return (1 - share) * normalDensity(z) + (share * normalDensity(z / factor)) / factor;
}

/**
 * Pins do not tighten themselves, so what went sharp beyond the common course is chance alone; and chance is the same on both sides.
 * Maximum likelihood over a few shares and factors, few strays being likelier beforehand.
 */
export function findStrays(standardised: readonly number[]): Strays {
  const sharp = standardised.filter((z) => z > 0);
  let best = { share: STRAY_SHARES[0]!, factor: 2, score: -Infinity };
  STRAY_SHARES.forEach((share, rank) => {
    for (const factor of STRAY_FACTORS) {
      const likelihood = sharp.reduce((sum, z) => sum + Math.log(steadyDensity(z, { share, factor })), 0);
      const score = likelihood - 0.5 * rank;
      if (score > best.score) best = { share, factor, score };
    }
  });
  return best;
}

/** Density of −E + N(0, sigma²), E exponential with mean MEAN_SLIP (the exponentially modified normal distribution). */
function exponentialBelow(rate: number, sigma: number): number {
  const lambda = 1 / MEAN_SLIP;
  const exponent = lambda * (rate + 0.5 * lambda * sigma ** 2);
  return lambda * Math.exp(exponent) * normalBelow(-(rate + lambda * sigma ** 2) / sigma);
}

function commonCourse(
  request: SlipRequest,
  known: readonly number[],
  probability: Float64Array,
  factor: number,
  shapes: readonly Float64Array[],
): Float64Array<ArrayBuffer> {
  const { rates, shapeDeviations } = request;
  const solution = solveRidge({
    rows: known.map((i) => ({
      values: [1, ...shapes.map((shape) => shape[i]!)],
      target: rates[i]!.centsPerYear!,
      weight: (1 - probability[i]!) / (factor * rates[i]!.standardUncertainty) ** 2,
    })),
    priors: [{ mean: 0, deviation: 30 }, ...shapeDeviations.map((deviation) => ({ mean: 0, deviation }))],
  });
  return Float64Array.from(rates, (_, i) =>
    shapes.reduce((sum, shape, j) => sum + solution[j + 1]! * shape[i]!, solution[0]!),
  );
}

function describe(
  rates: readonly StringRate[],
  course: Float64Array,
  probability: Float64Array,
  factor: number,
): SlipFit {
  const standardised = new Float64Array(rates.length);
  const ownRates = rates.map((rate, i) => (rate.centsPerYear === null ? null : rate.centsPerYear - course[i]!));
  const scatter = robustDeviation(ownRates.filter((rate) => rate !== null));
  const slips = rates.map((rate, i): Slip => {
    const own = ownRates[i] ?? null;
    if (own === null) return { centsPerYear: null, standardUncertainty: null, probability: null };
    const standardUncertainty = Math.hypot(
      factor * rate.standardUncertainty,
      scatter / Math.sqrt(Math.max(1, rates.length)),
    );
    standardised[i] = own / (factor * rate.standardUncertainty);
    return { centsPerYear: own, standardUncertainty, probability: probability[i]! };
  });
  return { slips, course, standardised };
}
