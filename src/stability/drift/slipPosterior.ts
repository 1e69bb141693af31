/**
 * Which strings slip by themselves: a mixture of steady strings and a few that only go flat.
 *
 * rate_i = common course + slip_i + noise. The common course is a constant with a step and slopes that are held as small as the
 * intervals show them to be; slip_i is nought for most strings and negative, of the order of a cent or two a year, for a few.
 * Each string's probability is the posterior of belonging to the few (a two-groups model, B. Efron, Statist. Sci. 23 (2008) 1–22);
 * the course is fitted with the others only.
 */

import type { Tails } from './changeTails.ts';
import { lessCourse, type OwnHistory } from './ownChanges.ts';
import { solveRidge } from './ridge.ts';
import { bayesFactors, learnScatterWeights, type SlipEvidence, slipEvidence } from './slipEvidence.ts';
import { median, robustDeviation } from './statistics.ts';
import { type StringRate, scatterFactor, stringRate } from './stringRates.ts';

export type Slip = {
  readonly centsPerYear: number | null;
  readonly standardUncertainty: number | null;
  readonly probability: number | null;
};

export type SlipFit = {
  readonly slips: readonly Slip[];
  /** The common course at each string. */
  readonly course: Float64Array;
};

/**
 * How many strings slip, before an instrument's own are known: as if half a string in a hundred had been seen to. The share is
 * learnt with the rest (empirical Bayes), so that a steady piano's many strings do not raise a false alarm by their number.
 */
const SEEN_SLIPPING = 0.5;
const SEEN_STRINGS = 100;
/** A slip repeats itself: with fewer changes nothing is learnt of a string. */
const LEAST_CHANGES = 3;
const COURSE_TURNS = 8;
const TURNS = 4;

export type SlipRequest = {
  readonly histories: readonly OwnHistory[];
  readonly tails: Tails;
  readonly shapes: readonly Float64Array[];
  /** Standard deviation of each shape's steady part, cents a year. */
  readonly shapeDeviations: readonly number[];
  /** Prior probability of each string, where a failing zone raises it; 0 elsewhere, where the learnt share holds. */
  readonly prior?: Float64Array;
};

export function fitSlips(request: SlipRequest): SlipFit {
  const { histories } = request;
  const rates = histories.map(stringRate);
  const known = rates.map((_, i) => i).filter((i) => rates[i]!.centsPerYear !== null);
  let probability: Float64Array = Float64Array.from(rates, (_, i) => request.prior?.[i] ?? 0);
  let { course, factor } = settleCourse(request, rates, known, probability);
  for (let turn = 0; turn < TURNS; turn++) {
    const evidence = known.map((i) =>
      slipEvidence(lessCourse(histories[i]!, course[i]!), request.tails, Math.max(1, factor)),
    );
    probability = probabilities(request, known, evidence, rates, probability);
    ({ course, factor } = settleCourse(request, rates, known, probability));
  }
  return describe(rates, course, probability, factor);
}

/** The course and the scatter about it, by turns; strings far off lose their say even before they are thought to slip. */
function settleCourse(
  request: SlipRequest,
  rates: readonly StringRate[],
  known: readonly number[],
  probability: Float64Array,
): { course: Float64Array; factor: number } {
  let course: Float64Array = new Float64Array(rates.length).fill(median(known.map((i) => rates[i]!.centsPerYear!)));
  let factor = 1;
  for (let turn = 0; turn < COURSE_TURNS; turn++) {
    const off = known.map((i) => (rates[i]!.centsPerYear! - course[i]!) / rates[i]!.standardUncertainty);
    factor = scatterFactor(off);
    const trust = new Float64Array(rates.length);
    known.forEach((i, j) => {
      trust[i] = (1 - probability[i]!) * Math.min(1, 5 / (4 + (off[j]! / factor) ** 2));
    });
    course = commonCourse(request, rates, known, trust, factor);
  }
  return { course, factor };
}

/** Turns of the learnt share, each cheap. */
const SHARE_TURNS = 30;

function probabilities(
  { prior }: SlipRequest,
  known: readonly number[],
  evidence: readonly SlipEvidence[],
  rates: readonly StringRate[],
  before: Float64Array,
): Float64Array {
  const scatterWeights = learnScatterWeights(evidence, (j) => 1 - before[known[j]!]!);
  const factors = evidence.map((own) => bayesFactors(own, scatterWeights));
  const temper = temperOf(factors.map(({ logSharp }) => logSharp));
  const probability = new Float64Array(rates.length);
  let share = SEEN_SLIPPING / SEEN_STRINGS;
  for (let turn = 0; turn < SHARE_TURNS; turn++) {
    let slipping = 0;
    let count = 0;
    known.forEach((i, j) => {
      const own = Math.max(share, prior?.[i] ?? 0);
      const isRepeated = rates[i]!.changeCount >= LEAST_CHANGES;
      probability[i] = isRepeated ? logistic(temper * factors[j]!.logFlat + Math.log(own / (1 - own))) : own;
      if (prior?.[i]) return;
      slipping += probability[i]!;
      count += 1;
    });
    share = (SEEN_SLIPPING + slipping) / (SEEN_STRINGS + count);
  }
  return probability;
}

function logistic(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}

/** Evidence for going sharp may reach the logarithm of the number of strings, and this much more, by chance. */
const CHANCE_BEYOND = 1;

/**
 * Exponent on all Bayes factors: below 1 where the evidence for going sharp, which is chance, goes further than so many strings let
 * expect. Then the evidence for going flat is no better.
 */
function temperOf(logSharp: readonly number[]): number {
  const largest = Math.max(...logSharp, 0);
  const expected = Math.log(Math.max(2, logSharp.length)) + CHANCE_BEYOND;
  return largest > expected ? expected / largest : 1;
}

function commonCourse(
  { shapes, shapeDeviations }: SlipRequest,
  rates: readonly StringRate[],
  known: readonly number[],
  trust: Float64Array,
  factor: number,
): Float64Array {
  const solution = solveRidge({
    rows: known.map((i) => ({
      values: [1, ...shapes.map((shape) => shape[i]!)],
      target: rates[i]!.centsPerYear!,
      weight: trust[i]! / (factor * rates[i]!.standardUncertainty) ** 2,
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
  const ownRates = rates.map((rate, i) => (rate.centsPerYear === null ? null : rate.centsPerYear - course[i]!));
  const scatter = robustDeviation(ownRates.filter((rate) => rate !== null));
  const slips = rates.map((rate, i): Slip => {
    const own = ownRates[i] ?? null;
    if (own === null) return { centsPerYear: null, standardUncertainty: null, probability: null };
    const standardUncertainty = Math.hypot(
      factor * rate.standardUncertainty,
      scatter / Math.sqrt(Math.max(1, rates.length)),
    );
    return { centsPerYear: own, standardUncertainty, probability: probability[i]! };
  });
  return { slips, course };
}
