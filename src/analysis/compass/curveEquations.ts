/** The normal equations of a curve through one figure per note: weights, covariance, Gauss–Newton step. */
import { invertSymmetric } from '../signal/smallSymmetric.ts';
import type { CurveFigure, CurveModel } from './curveModel.ts';

/** Parameters and, for each group of notes, their spread about the curve. */
export type CurveState = { readonly parameters: readonly number[]; readonly spreads: readonly number[] };

/** One figure as the fit sees it. */
export type CurveRow = {
  readonly residual: number;
  readonly gradient: readonly number[];
  readonly variance: number;
  /** Inverse variance times the trust that the figure has left. */
  readonly weight: number;
};

const STUDENT_FREEDOM = 4;
/** Parameters move by no more than this many of their priors' sigmas at once: the model is not a straight one. */
const LONGEST_STEP = 1;

export function curveRows(model: CurveModel, figures: readonly CurveFigure[], state: CurveState): CurveRow[] {
  return figures.map(({ midi, value, standardUncertainty }) => {
    const curve = model.at(midi, state.parameters);
    const residual = value - curve.value;
    const variance = standardUncertainty ** 2 + (state.spreads[model.spread.groupOf(midi)] ?? 0) ** 2;
    const trust = (STUDENT_FREEDOM + 1) / (STUDENT_FREEDOM + residual ** 2 / variance);
    return { residual, gradient: curve.gradient, variance, weight: trust / variance };
  });
}

/** Of the parameters, row by row. Undefined where the equations have no solution. */
export function curveCovariance(model: CurveModel, rows: readonly CurveRow[]): Float64Array | undefined {
  const size = model.priors.length;
  const normal = new Float64Array(size * size);
  for (const [index, { sigma }] of model.priors.entries()) normal[index * size + index] = 1 / sigma ** 2;
  for (const { gradient, weight } of rows)
    for (let i = 0; i < size; i++)
      for (let j = 0; j < size; j++) normal[i * size + j]! += weight * gradient[i]! * gradient[j]!;
  return invertSymmetric(normal, size);
}

/** Where the figures and the priors pull the parameters to. */
export function steppedParameters(
  model: CurveModel,
  rows: readonly CurveRow[],
  covariance: Float64Array,
  parameters: readonly number[],
): number[] {
  const pulls = model.priors.map(({ mean, sigma }, index) => {
    const fromFigures = rows.reduce((sum, row) => sum + row.weight * row.residual * row.gradient[index]!, 0);
    return fromFigures + (mean - parameters[index]!) / sigma ** 2;
  });
  const size = parameters.length;
  const steps = pulls.map((_, i) => pulls.reduce((sum, pull, j) => sum + covariance[i * size + j]! * pull, 0));
  const longest = Math.max(...steps.map((step, index) => Math.abs(step) / model.priors[index]!.sigma));
  const share = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
  return parameters.map((value, index) => value + share * steps[index]!);
}

/** Variance of the curve where its gradient is this. */
export function varianceAlong(covariance: Float64Array, gradient: readonly number[]): number {
  const size = gradient.length;
  let sum = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) sum += gradient[i]! * covariance[i * size + j]! * gradient[j]!;
  return sum;
}

/** How many figures' worth of freedom the curve has taken. */
export function freedomTaken(rows: readonly CurveRow[], covariance: Float64Array): number {
  return rows.reduce((sum, row) => sum + row.weight * varianceAlong(covariance, row.gradient), 0);
}
