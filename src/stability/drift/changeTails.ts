/** How heavy the tails of single changes are: Student's t law, its degrees of freedom and scale learnt from the residuals. */
import type { OwnHistory } from './ownChanges.ts';
import { fitRate } from './stringRates.ts';

export type Tails = {
  readonly freedom: number;
  /** On the scale of the stated deviations. */
  readonly scale: number;
};

/** Never lighter than fourteen degrees: one movement of three deviations is no evidence. */
const FREEDOMS = [4, 6, 9, 14];
const SCALES = [0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15, 1.2, 1.25, 1.3, 1.4, 1.5, 1.65, 1.8];
/** More values tell no better. */
const MOST_VALUES = 3000;
/** With few changes heavy tails are supposed: as if this many had been seen of four degrees of freedom. */
const USUAL: Tails = { freedom: 4, scale: 0.95 };
const FEW = 60;

/**
 * Maximum likelihood over a grid. The residuals are those of plain least squares, each over what its own leverage leaves of it, for a robust
 * fit of few changes makes normal noise look heavy.
 */
export function learnTails(histories: readonly OwnHistory[]): Tails {
  const residuals = histories.flatMap(studentisedResiduals);
  if (residuals.length < FEW) return USUAL;
  const stride = Math.max(1, Math.floor(residuals.length / MOST_VALUES));
  const squares = residuals.filter((_, index) => index % stride === 0).map((value) => value * value);
  let best = { ...USUAL, score: -Infinity };
  for (const freedom of FREEDOMS) {
    for (const scale of SCALES) {
      const score = squares.length * logConstant(freedom, scale) + logKernel(squares, freedom, scale);
      if (score > best.score) best = { freedom, scale, score };
    }
  }
  return { freedom: best.freedom, scale: best.scale };
}

const LEAST_CHANGES = 4;

function studentisedResiduals({ changes, responseDeviation }: OwnHistory): number[] {
  if (changes.length < LEAST_CHANGES) return [];
  const weights = changes.map(({ sigmaCents }) => 1 / sigmaCents ** 2);
  const fit = fitRate(changes, weights, responseDeviation);
  return changes.map((change, j) => {
    const off = change.cents - fit.rate * change.years - fit.strayedResponse * change.season;
    const left = 1 - weights[j]! * fit.leverage(change);
    return off / change.sigmaCents / Math.sqrt(Math.max(LEAST_LEFT, left));
  });
}

/** A change that the fit follows this closely tells nothing of noise. */
const LEAST_LEFT = 0.1;

function logKernel(squares: readonly number[], freedom: number, scale: number): number {
  const per = 1 / (freedom * scale * scale);
  return -0.5 * (freedom + 1) * squares.reduce((sum, square) => sum + Math.log1p(square * per), 0);
}

/** Logarithm of Γ((ν+1)/2) / (Γ(ν/2)·√(νπ)·scale). */
function logConstant(freedom: number, scale: number): number {
  return logGamma(0.5 * (freedom + 1)) - logGamma(0.5 * freedom) - 0.5 * Math.log(freedom * Math.PI) - Math.log(scale);
}

/** Stirling's series after shifting the argument above 8 (Abramowitz and Stegun 1964, 6.1.41): error below 1e−9. */
function logGamma(x: number): number {
  let shift = 0;
  let at = x;
  while (at < 8) {
    shift += Math.log(at);
    at += 1;
  }
  const series = 1 / (12 * at) - 1 / (360 * at ** 3) + 1 / (1260 * at ** 5);
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
