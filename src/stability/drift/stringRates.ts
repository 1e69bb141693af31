/** Each string's steady rate over its intervals, with its uncertainty. */
import type { OwnChange, OwnHistory } from './ownChanges.ts';
import { robustDeviation, studentWeight } from './statistics.ts';

export type StringRate = {
  /** Cents a year; null where there is no change of this string. */
  readonly centsPerYear: number | null;
  readonly standardUncertainty: number;
  readonly changeCount: number;
};

const TURNS = 8;

/**
 * Slope through the origin of own change against years, with Student-t weights, while the string's response to the season is free
 * within its deviation (generalised least squares: a rate that the season can imitate is less well known).
 */
export function stringRate(history: OwnHistory): StringRate {
  const { changes, responseDeviation } = history;
  if (changes.length === 0) return { centsPerYear: null, standardUncertainty: Infinity, changeCount: 0 };
  const plain = changes.map(({ sigmaCents }) => 1 / sigmaCents ** 2);
  const trust = trustedWeights(history);
  const trusted = plain.map((weight, j) => weight * trust[j]!);
  const fit = fitRate(changes, trusted, responseDeviation);
  const information = 0.5 * (fit.information + fitRate(changes, plain, responseDeviation).information);
  const excess = ownScatter(changes.map((change) => standardised(change, fit)));
  return {
    centsPerYear: fit.rate,
    standardUncertainty: excess / Math.sqrt(information),
    changeCount: changes.length,
  };
}

/** How far each change is trusted, 0 to 1: Student-t weights about the string's own rate and response. */
export function trustedWeights({ changes, responseDeviation }: OwnHistory): number[] {
  let trust = changes.map(() => 1);
  // With few changes no single one is an outlier by itself.
  if (changes.length < 4) return trust;
  for (let turn = 0; turn < TURNS; turn++) {
    const weights = changes.map(({ sigmaCents }, j) => trust[j]! / sigmaCents ** 2);
    const fit = fitRate(changes, weights, responseDeviation);
    trust = changes.map((change) => Math.min(1, studentWeight(standardised(change, fit))));
  }
  return trust;
}

export type RateFit = {
  readonly rate: number;
  /** Of the string's response from its neighbours' course, cents per %RH. */
  readonly strayedResponse: number;
  /** One over the rate's variance. */
  readonly information: number;
  /** Variance of the fitted change, in cents², where the weights are one over variances. */
  leverage(change: Pick<OwnChange, 'years' | 'season'>): number;
};

/** Generalised least squares with the given weights. */
export function fitRate(changes: readonly OwnChange[], weights: readonly number[], responseDeviation: number): RateFit {
  let [yy, ya, aa, yc, ac] = [0, 0, 1 / responseDeviation ** 2, 0, 0];
  changes.forEach(({ years, season, cents }, j) => {
    const weight = weights[j]!;
    yy += weight * years * years;
    ya += weight * years * season;
    aa += weight * season * season;
    yc += weight * years * cents;
    ac += weight * season * cents;
  });
  const information = yy - (ya * ya) / aa;
  const rate = (yc - (ya * ac) / aa) / information;
  return {
    rate,
    strayedResponse: (ac - rate * ya) / aa,
    information,
    leverage: ({ years, season }) => (years - (ya / aa) * season) ** 2 / information + (season * season) / aa,
  };
}

function standardised({ years, season, cents, sigmaCents }: OwnChange, fit: RateFit): number {
  return (cents - fit.rate * years - fit.strayedResponse * season) / sigmaCents;
}

/** How many changes the whole compass' noise counts for against a string's own. */
const COMMON_FREEDOM = 8;

/** Factor by which a string's own changes scatter more than usual, leaning on 1 where they are few. A much-played string moves more. */
function ownScatter(values: readonly number[]): number {
  const squares = values.reduce((sum, value) => sum + Math.min(9, value * value), 0);
  return Math.sqrt(Math.max(0.8, (COMMON_FREEDOM + squares) / (COMMON_FREEDOM + Math.max(1, values.length - 1))));
}

/** Factor by which the rates' scatter exceeds what their uncertainties say, most strings being steady; at least 0.85. */
export function scatterFactor(values: readonly number[]): number {
  if (values.length < 8) return 1;
  return Math.min(2.5, Math.max(0.85, robustDeviation(values)));
}
