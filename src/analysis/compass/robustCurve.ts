/**
 * A smooth curve through one figure per note, which wrong figures do not bend.
 *
 * Model: figure = curve(note; parameters) + what the note itself departs by + its measuring error. The departures have a spread
 * that is fitted with the curve, one for each group of notes (wound wire scatters more than plain wire). Figures far from the
 * curve lose their weight as under Student's t with four degrees of freedom (K. L. Lange, R. J. A. Little, J. M. G. Taylor, J. Am.
 * Stat. Assoc. 84 (1989) 881–896). Parameters have normal priors, so that a curve is fitted even where notes are few. Solved by
 * reweighted Gauss–Newton steps.
 */
import {
  type CurveRow,
  type CurveState,
  curveCovariance,
  curveRows,
  freedomTaken,
  steppedParameters,
  varianceAlong,
} from './curveEquations.ts';
import type { CurveFigure, CurveModel } from './curveModel.ts';
import { fittedSpreads } from './curveSpread.ts';

/** A figure against the curve that the other figures make. */
export type CurveDeparture = { readonly departure: number; readonly standardUncertainty: number };

export type CurveFit = {
  readonly parameters: readonly number[];
  /** Of the parameters. */
  readonly covariance: readonly (readonly number[])[];
  /** Spread of the notes about the curve, one for each group; measuring errors are not in it. */
  readonly spreads: readonly number[];
  /** In the order of the figures. */
  readonly departures: readonly CurveDeparture[];
  /** Number of figures less what the curve took of them. */
  readonly freedom: number;
};

const MOST_ROUNDS = 200;
/** Parameters and logs of spreads have settled when they move by less. */
const SETTLED = 1e-7;

/**
 * Undefined where the fit does not settle.
 * @throws {RangeError} if there is no figure, one is not finite, or an uncertainty is negative or not finite
 */
export function fitRobustCurve(model: CurveModel, figures: readonly CurveFigure[]): CurveFit | undefined {
  if (figures.length === 0) throw new RangeError('figures must hold at least one, got none');
  figures.forEach(mustBeFigure);
  const parameters = model.priors.map(({ mean }) => mean);
  let state: CurveState = { parameters, spreads: spreadsAbout(model, figures, parameters, 0) };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = nextState(model, figures, state);
    if (!next) return undefined;
    const isSettled = distance(state, next) < SETTLED;
    state = next;
    if (isSettled) return finished(model, figures, state);
  }
  return undefined;
}

/** The curve at a note and its standard uncertainty; the notes' spread about it is not in it. */
export function curveValue(model: CurveModel, fit: Pick<CurveFit, 'parameters' | 'covariance'>, midi: number) {
  const { value, gradient } = model.at(midi, fit.parameters);
  const variance = varianceAlong(Float64Array.from(fit.covariance.flat()), gradient);
  return { value, standardUncertainty: Math.sqrt(variance) };
}

function mustBeFigure({ midi, value, standardUncertainty }: CurveFigure): void {
  if (!Number.isFinite(midi) || !Number.isFinite(value))
    throw new RangeError(`figures must be finite, got ${value} at midi ${midi}`);
  if (!(standardUncertainty >= 0 && standardUncertainty < Number.POSITIVE_INFINITY))
    throw new RangeError(`standardUncertainty must be finite and not negative, got ${standardUncertainty} at ${midi}`);
}

function spreadsAbout(
  model: CurveModel,
  figures: readonly CurveFigure[],
  parameters: readonly number[],
  taken: number,
): number[] {
  const residuals = figures.map(({ midi, value, standardUncertainty }) => ({
    group: model.spread.groupOf(midi),
    size: Math.abs(value - model.at(midi, parameters).value),
    standardUncertainty,
  }));
  return fittedSpreads(model.spread, residuals, taken);
}

/** The spread goes half the way at a time, so that it and the weights do not chase each other. */
function nextState(model: CurveModel, figures: readonly CurveFigure[], state: CurveState): CurveState | undefined {
  const rows = curveRows(model, figures, state);
  const covariance = curveCovariance(model, rows);
  if (!covariance) return undefined;
  const parameters = steppedParameters(model, rows, covariance, state.parameters);
  const wanted = spreadsAbout(model, figures, parameters, freedomTaken(rows, covariance));
  return { parameters, spreads: wanted.map((spread, group) => Math.sqrt(spread * state.spreads[group]!)) };
}

function distance(a: CurveState, b: CurveState): number {
  const moves = a.parameters.map((value, index) => Math.abs(value - b.parameters[index]!));
  const changes = a.spreads.map((spread, group) => Math.abs(Math.log(spread / b.spreads[group]!)));
  return Math.max(...moves, ...changes);
}

function finished(model: CurveModel, figures: readonly CurveFigure[], state: CurveState): CurveFit | undefined {
  const rows = curveRows(model, figures, state);
  const covariance = curveCovariance(model, rows);
  if (!covariance) return undefined;
  const { parameters, spreads } = state;
  const size = parameters.length;
  return {
    parameters,
    covariance: parameters.map((_, row) => Array.from(covariance.subarray(row * size, (row + 1) * size))),
    spreads,
    departures: rows.map((row) => againstOthers(row, varianceAlong(covariance, row.gradient))),
    freedom: Math.max(1, figures.length - freedomTaken(rows, covariance)),
  };
}

/** What the figure would depart by had it not been among those fitted (to first order, as in leave-one-out regression). */
function againstOthers({ residual, variance, weight }: CurveRow, curveVariance: number): CurveDeparture {
  const others = 1 - weight * curveVariance;
  return { departure: residual / others, standardUncertainty: Math.sqrt(variance + curveVariance / others) };
}
