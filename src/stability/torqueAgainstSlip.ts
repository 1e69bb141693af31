/** Whether the pins that slip are the ones that turn easily: torque and slip of the same pins, side by side. */
import type { StringPosition } from '../piano/reading.ts';
import type { JudgedPin } from './drift/judgedPin.ts';
import type { PinTorque } from './torquePins.ts';

/** Negative slip: the string goes flat by itself. `slipU` is one standard uncertainty, in cents a year too. */
export type TorqueAndSlip = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly torqueNm: number;
  readonly slipCentsPerYear: number;
  readonly slipU: number;
};

/**
 * The pins of which both are known, in the torques' order. A torque is of the pin it was noted for; where a note has one torque or one
 * slip and the other did not say of which string it is (position 0), they are taken as the same pin's.
 */
export function torqueAndSlip(torques: readonly PinTorque[], pins: readonly JudgedPin[]): TorqueAndSlip[] {
  return torques.flatMap(({ midi, stringPosition, torqueNm }) => {
    const ofNote = pins.filter((pin) => pin.midi === midi && pin.slip.centsPerYear !== null);
    const torqueCount = torques.filter((torque) => torque.midi === midi).length;
    const pin =
      ofNote.find((own) => own.stringPosition === stringPosition) ?? theOnlyOne(ofNote, torqueCount, stringPosition);
    if (!pin || pin.slip.centsPerYear === null || pin.slip.standardUncertainty === null) return [];
    const { centsPerYear: slipCentsPerYear, standardUncertainty: slipU } = pin.slip;
    return [{ midi, stringPosition: pin.stringPosition, torqueNm, slipCentsPerYear, slipU }];
  });
}

function theOnlyOne(ofNote: readonly JudgedPin[], torqueCount: number, stringPosition: StringPosition) {
  const [only] = ofNote;
  const isAlone = ofNote.length === 1 && torqueCount === 1;
  return isAlone && only && (stringPosition === 0 || only.stringPosition === 0) ? only : undefined;
}

export type TwoKinds = {
  readonly slippingCount: number;
  readonly slippingMedianNm: number;
  readonly steadyCount: number;
  readonly steadyMedianNm: number;
};

/** How many standard uncertainties a slip must lie below nought to count as one. */
const BEYOND_SIGMAS = 2;

/** Median torque of the pins that go flat beyond their uncertainty, and of the others; null where there is only one kind. */
export function slippingAndSteady(pairs: readonly TorqueAndSlip[]): TwoKinds | null {
  const isSlipping = ({ slipCentsPerYear, slipU }: TorqueAndSlip) => slipCentsPerYear + BEYOND_SIGMAS * slipU < 0;
  const slipping = pairs.filter(isSlipping);
  const steady = pairs.filter((pair) => !isSlipping(pair));
  if (slipping.length === 0 || steady.length === 0) return null;
  return {
    slippingCount: slipping.length,
    slippingMedianNm: medianTorque(slipping),
    steadyCount: steady.length,
    steadyMedianNm: medianTorque(steady),
  };
}

function medianTorque(pairs: readonly TorqueAndSlip[]): number {
  const rising = pairs.map(({ torqueNm }) => torqueNm).sort((a, b) => a - b);
  const middle = (rising.length - 1) / 2;
  return ((rising[Math.floor(middle)] ?? 0) + (rising[Math.ceil(middle)] ?? 0)) / 2;
}

export type RankAgreement = {
  readonly rho: number;
  readonly low: number;
  readonly high: number;
  readonly pinCount: number;
};

/** Fewer pins say nothing about a connection. Chosen. */
export const FEWEST_PINS = 10;

/**
 * How far the order of torques and the order of slips agree: Spearman's rank correlation with a 95 % interval. Above zero where the
 * pins that turn easily are the ones that go flat. Null for fewer than FEWEST_PINS, or where all torques or all slips are alike.
 * Neighbouring pins share the wood, so the interval is narrower than it ought to be where a zone gives way.
 * Source: C. Spearman, Am. J. Psychol. 15 (1904) 72–101; the interval by Fisher's z with the variance of D. G. Bonett and T. A. Wright,
 * Psychometrika 65 (2000) 23–28 (from memory).
 */
export function rankAgreement(pairs: readonly TorqueAndSlip[]): RankAgreement | null {
  const pinCount = pairs.length;
  if (pinCount < FEWEST_PINS) return null;
  const rho = correlation(
    ranks(pairs.map(({ torqueNm }) => torqueNm)),
    ranks(pairs.map(({ slipCentsPerYear }) => slipCentsPerYear)),
  );
  if (rho === null) return null;
  const reach = 1.96 * Math.sqrt((1 + rho ** 2 / 2) / (pinCount - 3));
  const z = Math.atanh(Math.max(-NEARLY_ONE, Math.min(NEARLY_ONE, rho)));
  return { rho, low: Math.tanh(z - reach), high: Math.tanh(z + reach), pinCount };
}

/** Fisher's z is infinite at one. */
const NEARLY_ONE = 1 - 1e-9;

/** Equal values share the mean of their places. */
function ranks(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal + 1) / 2;
  });
}

function correlation(xs: readonly number[], ys: readonly number[]): number | null {
  const middle = (xs.length + 1) / 2;
  const sum = (term: (x: number, y: number) => number) =>
    xs.reduce((total, x, index) => total + term(x - middle, (ys[index] ?? middle) - middle), 0);
  const spread = Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y));
  return spread === 0 ? null : sum((x, y) => x * y) / spread;
}
