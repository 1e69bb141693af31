/**
 * Tension and stress of a string at its sounding frequency.
 *
 * Model: an ideal flexible string, T = μ(2Lf)². A stiff string sounds sharp of this by √(1 + B), so with the frequency that sounds
 * both figures read high by the factor 1 + B (2 % at the top of the compass, less than 0.1 % below middle C). Where the ends clamp
 * the wire instead of pinning it they read high by up to (4/π)·√B more (Fletcher; from memory): 4 % at A4, 15 % at C8. That is on the
 * safe side. The stress of a wound string is its core's, as the wrap carries nothing.
 * Source: H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203–209.
 */
import { STEEL_DENSITY } from '../piano/wireMaterial.ts';
import { positive } from './positiveFigure.ts';

export type PlainString = { readonly diameterMm: number; readonly speakingLengthMm: number };

/** A string by its mass: wound, or plain of any metal. */
export type StringMass = {
  readonly massPerLengthKgPerM: number;
  /** Of the wire that carries: the core of a wound string. */
  readonly coreDiameterMm: number;
  readonly speakingLengthMm: number;
};

export type StringLoad = { readonly tensionN: number; readonly stressMpa: number };

/**
 * @throws {RangeError} if a dimension, the density or the frequency is not a finite number above zero
 * @example loadAtPitch({ diameterMm: 1, speakingLengthMm: 400 }, 440).stressMpa // 972.6464
 */
export function loadAtPitch(
  string: PlainString,
  frequencyHz: number,
  densityKgPerM3: number = STEEL_DENSITY.value,
): StringLoad {
  const areaM2 = areaOf(positive('diameterMm', string.diameterMm));
  const massPerLengthKgPerM = positive('densityKgPerM3', densityKgPerM3) * areaM2;
  const { diameterMm: coreDiameterMm, speakingLengthMm } = string;
  return loadOfMass({ massPerLengthKgPerM, coreDiameterMm, speakingLengthMm }, frequencyHz);
}

/** @throws {RangeError} if a figure is not a finite number above zero */
export function loadOfMass(string: StringMass, frequencyHz: number): StringLoad {
  const lengthM = positive('speakingLengthMm', string.speakingLengthMm) / 1000;
  const waveSpeedMps = 2 * lengthM * positive('frequencyHz', frequencyHz);
  const tensionN = positive('massPerLengthKgPerM', string.massPerLengthKgPerM) * waveSpeedMps ** 2;
  return { tensionN, stressMpa: tensionN / areaOf(positive('coreDiameterMm', string.coreDiameterMm)) / 1e6 };
}

/** Cross-section in m². */
function areaOf(diameterMm: number): number {
  return (Math.PI / 4) * (diameterMm / 1000) ** 2;
}

export type BreakingShare =
  | { readonly known: true; readonly share: number } // dimensionless: 0.6 is 60 % of breaking
  | { readonly known: false; readonly reason: 'wire-grade-unknown' };

/** Share of the wire's tensile strength in use. An unknown grade is an answer, not an error. */
export function breakingShare(load: StringLoad, tensileStrengthMpa?: number): BreakingShare {
  if (tensileStrengthMpa === undefined) return { known: false, reason: 'wire-grade-unknown' };
  return { known: true, share: load.stressMpa / positive('tensileStrengthMpa', tensileStrengthMpa) };
}

/**
 * How much the tension of a string changes with a change of its pitch, as a share: T goes with the square of the frequency.
 * @example tensionGrowth(100) // 0.1225: a semitone
 */
export function tensionGrowth(changeCents: number): number {
  return 2 ** (changeCents / 600) - 1;
}

/**
 * The torque that a string exerts on its own tuning pin, in N·m: tension times the arm, pin and wire radius together. A pin that
 * turns at less cannot hold. Source: mechanics; the friction at agraffe or capo, which carries a part, is left out.
 * @example stringTorqueNm({ tensionN: 711.7, pinDiameterMm: 7.163, wireDiameterMm: 0.991 }) // 2.90
 */
export function stringTorqueNm(pin: {
  readonly tensionN: number;
  readonly pinDiameterMm: number;
  readonly wireDiameterMm: number;
}): number {
  const armMm = (positive('pinDiameterMm', pin.pinDiameterMm) + positive('wireDiameterMm', pin.wireDiameterMm)) / 2;
  return (positive('tensionN', pin.tensionN) * armMm) / 1000;
}
