/** Where the points of a partial's envelope stand: time across, decibels down. */
import type { EnvelopePoint } from '../../analysis/signal/partialEnvelope.ts';
import { formatNumber } from '../../piano/format.ts';

export const ENVELOPE_HEIGHT = 190;
const LEFT = 40;
const RIGHT = 12;
const TOP = 10;
const AXIS_HEIGHT = 26;
const DEEPEST_DB = -50;

export type Tick = { readonly at: number; readonly label: string };

export type EnvelopeDrawing = {
  /** Data of an SVG path. */
  readonly path: string;
  readonly timeTicks: readonly Tick[];
  readonly levelTicks: readonly Tick[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** Times from the strike. @param width in CSS pixels */
export function envelopeDrawing(points: readonly EnvelopePoint[], width: number): EnvelopeDrawing {
  const [right, bottom] = [Math.max(LEFT + 1, width - RIGHT), ENVELOPE_HEIGHT - AXIS_HEIGHT];
  const startS = points[0]?.timeS ?? 0;
  const lengthS = Math.max(0.1, (points.at(-1)?.timeS ?? 0) - startS);
  const x = (timeS: number) => LEFT + ((right - LEFT) * timeS) / lengthS;
  const y = (levelDb: number) => TOP + ((bottom - TOP) * Math.max(levelDb, DEEPEST_DB)) / DEEPEST_DB;
  const stepS = lengthS > 6 ? 2 : lengthS > 2.5 ? 1 : 0.5;
  const timeTicks = Array.from({ length: Math.floor(lengthS / stepS) + 1 }, (_, index) => index * stepS);
  return {
    path: points
      .map(({ timeS, levelDb }) => `${x(timeS - startS).toFixed(1)} ${y(levelDb).toFixed(1)}`)
      .join('L')
      .replace(/^/, 'M'),
    timeTicks: timeTicks.map((timeS) => ({
      at: x(timeS),
      label: formatNumber(timeS, Number.isInteger(stepS) ? 0 : 1),
    })),
    levelTicks: [0, -10, -20, -30, -40, -50].map((levelDb) => ({ at: y(levelDb), label: formatNumber(levelDb, 0) })),
    left: LEFT,
    right,
    top: TOP,
    bottom,
  };
}
