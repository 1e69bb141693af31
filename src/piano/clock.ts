/**
 * How far a sound device's sample clock is off, and what that does to pitches: it moves all notes alike, by 0.17 cents per 100 ppm.
 */
import { hzToCents } from './cents.ts';
import type { CalibrationId } from './ids.ts';

export type ClockOffset = {
  /** Parts per million by which the device takes more samples in a second than it says. Above zero: pitches read flat. */
  readonly offsetPpm: number;
  readonly offsetStandardUncertaintyPpm: number;
};

export type ClockReference = {
  readonly kind: 'fork' | 'tone';
  /** What its maker or its display says. */
  readonly statedHz: number;
  readonly statedStandardUncertaintyHz: number;
  /** For a fork: at which temperature it has that frequency, and how warm it was. Null for a tone. */
  readonly statedAtC: number | null;
  readonly temperatureC: number | null;
};

/** One comparison of a microphone with a reference. */
export type ClockCalibration = ClockOffset & {
  readonly id: CalibrationId;
  readonly deviceLabel: string;
  readonly sampleRateHz: number;
  /** ISO 8601 date and time. */
  readonly measuredAt: string;
  readonly reference: ClockReference;
  readonly measuredHz: number;
  readonly measuredStandardUncertaintyHz: number;
};

/**
 * A steel fork's frequency falls by this share per kelvin. Standing: from memory; steel's elastic modulus (about −2.4e-4 per K) and
 * expansion (1.2e-5 per K) give −1.14e-4 by f ∝ thickness / length² · √(modulus / density). Forks of other metals differ.
 */
const FORK_SHARE_PER_K = -1.1e-4;
/** How well a fork's own warmth is known from a thermometer beside it; chosen, for one that hangs in the room and is held by its stem. */
const FORK_TEMPERATURE_UNCERTAINTY_K = 1;

/** The reference's frequency as it was warm, with what is not known about it. */
export function referenceFrequency(reference: ClockReference): { hz: number; standardUncertaintyHz: number } {
  const { kind, statedHz, statedStandardUncertaintyHz, statedAtC, temperatureC } = reference;
  if (kind === 'tone' || statedAtC === null || temperatureC === null)
    return { hz: statedHz, standardUncertaintyHz: statedStandardUncertaintyHz };
  const hz = statedHz * (1 + FORK_SHARE_PER_K * (temperatureC - statedAtC));
  const warmthHz = statedHz * FORK_SHARE_PER_K * FORK_TEMPERATURE_UNCERTAINTY_K;
  return { hz, standardUncertaintyHz: Math.hypot(statedStandardUncertaintyHz, warmthHz) };
}

/**
 * A clock that runs fast by p shows a frequency too low by the factor 1 + p.
 * @example clockOffset({ hz: 440, standardUncertaintyHz: 0 }, { hz: 439.956, standardUncertaintyHz: 0 }).offsetPpm // 100.01
 */
export function clockOffset(
  reference: { readonly hz: number; readonly standardUncertaintyHz: number },
  measured: { readonly hz: number; readonly standardUncertaintyHz: number },
): ClockOffset {
  const relative = Math.hypot(
    reference.standardUncertaintyHz / reference.hz,
    measured.standardUncertaintyHz / measured.hz,
  );
  return { offsetPpm: (reference.hz / measured.hz - 1) * 1e6, offsetStandardUncertaintyPpm: relative * 1e6 };
}

/** By how much pitches read flat with a clock that is so much fast. @example ppmToCents(100) // 0.1731 */
export function ppmToCents(ppm: number): number {
  return hzToCents(1 + ppm / 1e6, 1);
}

/** Whether an offset can be told from none: at more than twice its uncertainty, nineteen times in twenty. */
export function isOffsetTold({ offsetPpm, offsetStandardUncertaintyPpm }: ClockOffset): boolean {
  return Math.abs(offsetPpm) > 2 * offsetStandardUncertaintyPpm;
}
