/** What a curve along the compass is made of, and the figures it goes through. */
import type { SpreadPrior } from './curveSpread.ts';

export type CurvePoint = { readonly value: number; readonly gradient: readonly number[] };

export type CurveModel = {
  /** Value of the curve at a note, and how it changes with each parameter. */
  readonly at: (midi: number, parameters: readonly number[]) => CurvePoint;
  readonly priors: readonly { readonly mean: number; readonly sigma: number }[];
  readonly spread: SpreadPrior;
};

export type CurveFigure = {
  readonly midi: number;
  readonly value: number;
  /** Of measuring it; 0 where only the notes' own spread counts. */
  readonly standardUncertainty: number;
};
