/**
 * F0 and B from the partials: f_n = n·f0·√(1 + B·n²) (H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203–209).
 *
 * Weighted and robust: partials that lie off the curve (a phantom, hum, a partial pushed aside by the soundboard) lose their
 * weight as under Student's t with four degrees of freedom (K. L. Lange, R. J. A. Little, J. M. G. Taylor, J. Am. Stat. Assoc. 84
 * (1989) 881–896). Real strings scatter about the curve by more than their measuring errors, so a common extra scatter is
 * estimated with it and counted in the uncertainties (as between-study variance is: R. DerSimonian, N. Laird, Control. Clin.
 * Trials 7 (1986) 177–188).
 */
import { uncertaintyHzToCents } from '../../piano/cents.ts';
import { partialHz } from './typicalInharmonicity.ts';

export type PartialFrequency = {
  readonly partialNumber: number;
  readonly hz: number;
  readonly standardUncertaintyHz: number;
};

export type InharmonicityFit = {
  readonly f0Hz: number;
  readonly f0StandardUncertaintyHz: number;
  readonly inharmonicityB: number;
  readonly inharmonicityBStandardUncertainty: number;
  /** Scatter of the partials about the curve beyond their own uncertainties. */
  readonly extraScatterCents: number;
  /** Weight of each partial in the fit, 0…1, in the order given: below about 0.2 it is off the curve. */
  readonly weights: readonly number[];
  /** Covariance of (f0 in cents, B). */
  readonly covariance: { readonly cents: number; readonly both: number; readonly b: number };
};

export type InharmonicityPrior = { readonly logB: number; readonly sigma: number };

const STUDENT_FREEDOM = 4;
/** No partial's frequency is trusted further than this, however clean: no single one may rule the fit. */
const LEAST_SIGMA_CENTS = 0.0005;

/**
 * @param start where the search begins; must be near enough that no partial is numbered wrongly
 * @param prior what is known of B beforehand; it matters only where the partials say little
 * Returns undefined with fewer than three partials, or fewer than two where a prior is given. A caller that reports B as measured
 * must ask for three.
 */
export function fitInharmonicity(
  partials: readonly PartialFrequency[],
  start: { readonly f0Hz: number; readonly inharmonicityB: number },
  prior?: InharmonicityPrior,
): InharmonicityFit | undefined {
  if (partials.length < (prior ? 2 : 3)) return undefined;
  let state = { logF0: Math.log(start.f0Hz), b: Math.max(start.inharmonicityB, 1e-7) };
  let extraCents = initialScatterCents(partials, start);
  let step = solveStep(partials, state, extraCents, prior);
  for (let iteration = 0; iteration < 60 && step; iteration++) {
    const before = state;
    state = { logF0: state.logF0 + step.centsChange / CENTS_PER_LOG, b: Math.max(1e-8, state.b + step.bChange) };
    extraCents = 0.5 * extraCents + 0.5 * scatterCents(partials, state);
    step = solveStep(partials, state, extraCents, prior);
    const moved = Math.abs(state.logF0 - before.logF0) * CENTS_PER_LOG + Math.abs(state.b / before.b - 1);
    if (iteration > 12 && moved < 1e-9) break;
  }
  if (!step) return undefined;
  const f0Hz = Math.exp(state.logF0);
  return {
    f0Hz,
    f0StandardUncertaintyHz: (Math.sqrt(step.covariance.cents) / CENTS_PER_LOG) * f0Hz,
    inharmonicityB: state.b,
    inharmonicityBStandardUncertainty: Math.sqrt(step.covariance.b),
    extraScatterCents: extraCents,
    weights: step.weights,
    covariance: step.covariance,
  };
}

const CENTS_PER_LOG = 1200 / Math.LN2;

type State = { readonly logF0: number; readonly b: number };

function residualCents(partial: PartialFrequency, state: State): number {
  const n = partial.partialNumber;
  return CENTS_PER_LOG * (Math.log(partial.hz / n) - state.logF0 - 0.5 * Math.log1p(state.b * n * n));
}

function sigmaCents(partial: PartialFrequency): number {
  return Math.max(LEAST_SIGMA_CENTS, uncertaintyHzToCents(partial.standardUncertaintyHz, partial.hz));
}

function initialScatterCents(partials: readonly PartialFrequency[], start: { f0Hz: number; inharmonicityB: number }) {
  const state = { logF0: Math.log(start.f0Hz), b: start.inharmonicityB };
  return median(partials.map((partial) => Math.abs(residualCents(partial, state))));
}

/**
 * Extra scatter that brings the standardised residuals to what a normal distribution has: their median where there are many (a
 * partial off the curve must not raise it), their mean square where there are few. None, unless they clearly exceed their own
 * uncertainties: else chance alone would make every fit a little too modest.
 */
function scatterCents(partials: readonly PartialFrequency[], state: State): number {
  const freedom = partials.length - 2;
  if (freedom < 1) return 0;
  const rows = partials.map((partial) => ({
    size: Math.abs(residualCents(partial, state)),
    sigma: sigmaCents(partial),
  }));
  const inflation = Math.sqrt(partials.length / freedom);
  const excess = (extra: number) => {
    const ratios = rows.map((row) => (inflation * row.size) / Math.hypot(row.sigma, extra));
    if (freedom >= MANY) return median(ratios) / NORMAL_MEDIAN;
    return Math.sqrt(ratios.reduce((sum, ratio) => sum + ratio * ratio, 0) / rows.length);
  };
  if (excess(0) <= 1 + CHANCE / Math.sqrt(2 * freedom)) return 0;
  let low = 0;
  let high = 100;
  for (let i = 0; i < 40; i++) {
    const middle = 0.5 * (low + high);
    if (excess(middle) > 1) low = middle;
    else high = middle;
  }
  return high;
}

/** Degrees of freedom from which a median is a fair measure of scatter. */
const MANY = 6;
/** Scatter counts as real when it exceeds the uncertainties by this many standard deviations of its own. */
const CHANCE = 2;

/** Median of |x| for a standard normal x. */
const NORMAL_MEDIAN = 0.6745;

function solveStep(
  partials: readonly PartialFrequency[],
  state: State,
  extraCents: number,
  prior?: InharmonicityPrior,
) {
  let aa = 0;
  let ab = 0;
  let bb = 0;
  let ga = 0;
  let gb = 0;
  const weights: number[] = [];
  for (const partial of partials) {
    const n2 = partial.partialNumber ** 2;
    const variance = sigmaCents(partial) ** 2 + extraCents ** 2;
    const residual = residualCents(partial, state);
    const trust = (STUDENT_FREEDOM + 1) / (STUDENT_FREEDOM + residual ** 2 / variance);
    const weight = trust / variance;
    weights.push(Math.min(1, trust));
    const slope = (0.5 * CENTS_PER_LOG * n2) / (1 + state.b * n2);
    aa += weight;
    ab += weight * slope;
    bb += weight * slope * slope;
    ga += weight * residual;
    gb += weight * residual * slope;
  }
  if (prior) {
    // A normal prior on log B, linearised: d(log B) = dB / B.
    const precision = 1 / (prior.sigma * state.b) ** 2;
    bb += precision;
    gb += precision * state.b * (prior.logB - Math.log(state.b));
  }
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 0)) return undefined;
  const bChange = (aa * gb - ab * ga) / determinant;
  const limited = Math.max(-0.6 * state.b, Math.min(1.5 * state.b, bChange));
  return {
    bChange: limited,
    centsChange: (ga - ab * limited) / aa,
    weights,
    covariance: { cents: bb / determinant, both: -ab / determinant, b: aa / determinant },
  };
}

/** Predicted frequency of a partial and its standard uncertainty, the partials' scatter about the curve included. */
export function predictPartial(fit: InharmonicityFit, partialNumber: number) {
  const hz = partialHz(fit.f0Hz, fit.inharmonicityB, partialNumber);
  const n2 = partialNumber ** 2;
  const slope = (0.5 * CENTS_PER_LOG * n2) / (1 + fit.inharmonicityB * n2);
  const { cents, both, b } = fit.covariance;
  const variance = cents + 2 * slope * both + slope * slope * b + fit.extraScatterCents ** 2;
  return { hz, standardUncertaintyHz: (Math.sqrt(variance) / CENTS_PER_LOG) * hz };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((x, y) => x - y);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : 0.5 * (upper + (sorted[middle - 1] ?? upper));
}
