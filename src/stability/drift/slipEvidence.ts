/**
 * What one string's changes say for a slip, and what they would say for the same slip turned round.
 *
 * Likelihood of the changes under a steady rate, Student-t noise, with the string's own scatter (some strings are played more or set
 * worse) and its own response to the season integrated out over grids. One large fall is a tail of the noise; only falls that
 * come again and again are evidence. Pins do not tighten themselves, so what speaks for sharpening is chance, and chance is alike on
 * both sides: it shows how far evidence goes without a slip (as decoys do: R. Barber and E. Candès, Ann. Statist. 43 (2015) 2055–2085).
 */
import type { Tails } from './changeTails.ts';
import type { OwnHistory } from './ownChanges.ts';
import { trustedWeights } from './stringRates.ts';

/** Likelihoods of one string's changes, on a scale of its own, each by OWN_SCATTERS. */
export type SlipEvidence = {
  readonly holding: readonly number[];
  readonly flat: readonly number[];
  readonly sharp: readonly number[];
};

/** A string's own scatter over the usual. */
export const OWN_SCATTERS = [0.7, 1, 1.4, 2, 3];
export const USUAL_SCATTER_WEIGHTS = [0.15, 0.65, 0.15, 0.04, 0.01];

/** A pin that holds may still move steadily by about this much either way, cents a year. */
const HOLDING_RATES = [-0.15, 0, 0.15];
const HOLDING_WEIGHTS = [0.25, 0.5, 0.25];

/** Slips, cents a year: s·e^(−s/0.8), so about 1.6 in the mean and few of no account. */
const SLIPS = [0.3, 0.5, 0.7, 0.9, 1.15, 1.4, 1.7, 2, 2.4, 2.9, 3.5, 4.5, 6, 8];
const SLIP_WEIGHTS = slipWeights(0.8);

function slipWeights(scale: number): number[] {
  const width = (index: number) => ((SLIPS[index + 1] ?? 9) - (SLIPS[index - 1] ?? 0.15)) / 2;
  const weights = SLIPS.map((slip, index) => slip * Math.exp(-slip / scale) * width(index));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** @param noiseFactor on all deviations, where the strings' rates scatter more than their changes tell */
export function slipEvidence(history: OwnHistory, tails: Tails, noiseFactor: number): SlipEvidence {
  const likelihood = likelihoods(history, tails, noiseFactor);
  const mean = (rates: readonly number[], weights: readonly number[]) => {
    const sums = OWN_SCATTERS.map(() => 0);
    rates.forEach((rate, r) => {
      for (const [f, value] of likelihood(rate).entries()) sums[f]! += weights[r]! * value;
    });
    return sums;
  };
  return {
    holding: mean(HOLDING_RATES, HOLDING_WEIGHTS),
    flat: mean(
      SLIPS.map((slip) => -slip),
      SLIP_WEIGHTS,
    ),
    sharp: mean(SLIPS, SLIP_WEIGHTS),
  };
}

/** Natural logarithm of the Bayes factor of slipping against holding, and of the same slip turned round. */
export function bayesFactors({ holding, flat, sharp }: SlipEvidence, scatterWeights: readonly number[]) {
  const log = (values: readonly number[]) =>
    Math.log(
      Math.max(
        1e-290,
        values.reduce((sum, value, f) => sum + value * scatterWeights[f]!, 0),
      ),
    );
  return { logFlat: log(flat) - log(holding), logSharp: log(sharp) - log(holding) };
}

const SCATTER_TURNS = 60;
/** As if this many strings of the usual kind had been seen. */
const SEEN_STRINGS = 10;

/** How the strings' own scatters are spread (expectation and maximisation), each string counting as far as it holds. */
export function learnScatterWeights(
  evidence: readonly SlipEvidence[],
  holdingShare: (index: number) => number,
): number[] {
  let weights: number[] = [...USUAL_SCATTER_WEIGHTS];
  for (let turn = 0; turn < SCATTER_TURNS; turn++) {
    const sums = USUAL_SCATTER_WEIGHTS.map((usual) => SEEN_STRINGS * usual);
    evidence.forEach(({ holding }, index) => {
      const own = holding.map((value, f) => value * weights[f]!);
      const total = own.reduce((sum, value) => sum + value, 0);
      if (total > 0) for (const [f, value] of own.entries()) sums[f]! += (holdingShare(index) * value) / total;
    });
    const total = sums.reduce((sum, value) => sum + value, 0);
    weights = sums.map((sum) => sum / total);
  }
  return weights;
}

/** Gauss and Hermite's three points: places in standard deviations, weights divided by the normal density's e^(−x²/2). */
const NODES = [
  { at: -Math.sqrt(3), weight: Math.exp(1.5) / 6 },
  { at: 0, weight: 2 / 3 },
  { at: Math.sqrt(3), weight: Math.exp(1.5) / 6 },
];

/** For a rate, the likelihood for each of OWN_SCATTERS, responses integrated out; on a common scale that keeps it from vanishing. */
function likelihoods(history: OwnHistory, { freedom, scale }: Tails, noiseFactor: number): (rate: number) => number[] {
  const { changes, responseDeviation } = history;
  const count = changes.length;
  const deviations = changes.map((change) => change.sigmaCents * scale * noiseFactor);
  const cents = Float64Array.from(changes, (change, j) => change.cents / deviations[j]!);
  const years = Float64Array.from(changes, (change, j) => change.years / deviations[j]!);
  const seasons = Float64Array.from(changes, (change, j) => change.season / deviations[j]!);
  const power = -0.5 * (freedom + 1);
  const logAt = (rate: number, response: number, scatter: number) => {
    const per = 1 / (freedom * scatter * scatter);
    let product = 1;
    let logs = 0;
    for (let j = 0; j < count; j++) {
      const off = cents[j]! - rate * years[j]! - response * seasons[j]!;
      product *= 1 + off * off * per;
      if (product > 1e200) {
        logs += Math.log(product);
        product = 1;
      }
    }
    return power * (logs + Math.log(product)) - count * Math.log(scatter);
  };
  const trust = trustedWeights(history);
  const sum = (a: Float64Array, b: Float64Array) => trust.reduce((total, w, j) => total + w * a[j]! * b[j]!, 0);
  const [aa, ya, ac] = [sum(seasons, seasons), sum(years, seasons), sum(seasons, cents)];
  const logLikelihood = (rate: number, scatter: number) => {
    const precision = aa / scatter ** 2 + 1 / responseDeviation ** 2;
    const middle = (ac - rate * ya) / scatter ** 2 / precision;
    const deviation = 1 / Math.sqrt(precision);
    const logs = NODES.map(({ at }) => {
      const response = middle + at * deviation;
      return logAt(rate, response, scatter) - 0.5 * (response / responseDeviation) ** 2;
    });
    const most = Math.max(...logs);
    return (
      most + Math.log(deviation * logs.reduce((total, log, q) => total + NODES[q]!.weight * Math.exp(log - most), 0))
    );
  };
  // The best that any scatter does with no rate: everything else is told against it.
  const reference = Math.max(...OWN_SCATTERS.map((scatter) => logLikelihood(0, scatter)));
  return (rate) => OWN_SCATTERS.map((scatter) => Math.exp(Math.min(600, logLikelihood(rate, scatter) - reference)));
}
