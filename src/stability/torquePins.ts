/** One torque for each tuning pin, out of what a wrench read at one visit. */
import type { StringPosition } from '../piano/reading.ts';
import type { TorqueReading } from '../piano/stringingRecords.ts';

export type PinTorque = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly torqueNm: number;
  /** Read in which directions: turned sharpwards the wrench works against the string as well, flatwards the string helps it. */
  readonly read: TorqueReading['direction'] | 'both ways';
};

/**
 * In pin order: by note, then by string from left to right. A pin that was read in both directions has the mean of both, which is
 * the pin's own friction, as the string's part cancels. Readings of one pin in one direction are averaged too.
 * Source: mechanics; the string's torque adds to friction one way and is taken from it the other way.
 */
export function pinTorques(readings: readonly TorqueReading[]): PinTorque[] {
  const byPin = new Map<string, TorqueReading[]>();
  for (const reading of readings) {
    const key = `${reading.midi} ${reading.stringPosition}`;
    byPin.set(key, [...(byPin.get(key) ?? []), reading]);
  }
  return [...byPin.values()].map(torqueOfPin).sort(inPinOrder);
}

function torqueOfPin(own: readonly TorqueReading[]): PinTorque {
  const { midi, stringPosition } = own[0] as TorqueReading;
  const sharpwards = own.filter((reading) => reading.direction === 'sharpwards');
  const flatwards = own.filter((reading) => reading.direction === 'flatwards');
  if (sharpwards.length > 0 && flatwards.length > 0) {
    const torqueNm = (mean(sharpwards) + mean(flatwards)) / 2;
    return { midi, stringPosition, torqueNm, read: 'both ways' };
  }
  const [first, ...others] = own.map((reading) => reading.direction);
  const read = first !== undefined && others.every((direction) => direction === first) ? first : 'not noted';
  return { midi, stringPosition, torqueNm: mean(own), read };
}

function mean(readings: readonly TorqueReading[]): number {
  return readings.reduce((sum, { torqueNm }) => sum + torqueNm, 0) / readings.length;
}

export function inPinOrder(
  a: { readonly midi: number; readonly stringPosition: number },
  b: { readonly midi: number; readonly stringPosition: number },
): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
