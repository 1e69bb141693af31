/**
 * How fast a page feels, as one number: the published way of Lighthouse, the web's common audit.
 *
 * Each figure gets a score from 0 to 1 on a log-normal curve that is 0.9 at one control point and 0.5 at the other; the score is their
 * weighted mean. Source: "Lighthouse performance scoring", developer.chrome.com/docs/lighthouse/performance/performance-scoring, weights of
 * version 10 and later; the control points, those for telephones, are from memory. The speed index (a tenth of the weight) needs a film of
 * the page's loading and is left out; the other weights stand for the whole.
 */
import { normalBelow } from '../../src/survey/certaintyTrial.ts';

export type PageTimes = {
  readonly firstPaintMs: number;
  readonly largestPaintMs: number;
  readonly blockedMs: number;
  readonly layoutShift: number;
};

type Curve = { readonly goodAt: number; readonly medianAt: number; readonly weight: number };

const CURVES: Readonly<Record<keyof PageTimes, Curve>> = {
  firstPaintMs: { goodAt: 1800, medianAt: 3000, weight: 10 },
  largestPaintMs: { goodAt: 2500, medianAt: 4000, weight: 25 },
  blockedMs: { goodAt: 200, medianAt: 600, weight: 30 },
  layoutShift: { goodAt: 0.1, medianAt: 0.25, weight: 25 },
};
/** Of the standard normal distribution: nine tenths lie below. */
const NINE_TENTHS = 1.2815515655446004;

/** From 0 to 100. */
export function performanceScore(times: PageTimes): number {
  const keys = Object.keys(CURVES) as (keyof PageTimes)[];
  const total = keys.reduce((sum, key) => sum + CURVES[key].weight, 0);
  return (100 * keys.reduce((sum, key) => sum + CURVES[key].weight * scoreOn(CURVES[key], times[key]), 0)) / total;
}

/** 1 at nought, 0.9 at `goodAt`, 0.5 at `medianAt`, less and less beyond. */
function scoreOn({ goodAt, medianAt }: Curve, value: number): number {
  if (value <= 0) return 1;
  const spread = Math.log(medianAt / goodAt) / NINE_TENTHS;
  return normalBelow(-Math.log(value / medianAt) / spread);
}
