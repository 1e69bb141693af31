/** Synthetic takes and their readings, with what most tests want as the usual. */
import { type MeasureOptions, measureTake } from '../../src/analysis/tone/measureTake.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import type { StringSpec } from '../support/stringTone.ts';
import { type NoteSpec, type SyntheticNote, synthesizeNote } from '../support/syntheticString.ts';

/** Enough for every partial below 9 kHz, and quick. */
export const RATE_HZ = 22050;

export type TakeSpec = Partial<NoteSpec> & { readonly strings: readonly StringSpec[] };

/** Two seconds with a lead of 0.3 s, unless said. */
export function takeOf(spec: TakeSpec): SyntheticNote & { readonly sampleRateHz: number } {
  const full = { durationS: 2, sampleRateHz: RATE_HZ, leadS: 0.3, seed: 1, ...spec };
  return { ...synthesizeNote(full), sampleRateHz: full.sampleRateHz };
}

/** The reading. Throws with the reason where there is none. */
export function readingOf(
  samples: Float32Array,
  sampleRateHz: number,
  options: Partial<MeasureOptions> = {},
): NoteReading {
  const outcome = measureTake(samples, sampleRateHz, { pitchStandardHz: 440, stringPosition: 0, ...options });
  if (!outcome.found) throw new Error(`${outcome.reason}: ${outcome.detail}`);
  return outcome.reading;
}

/** Synthesizes and measures at once. */
export function measured(spec: TakeSpec, options: Partial<MeasureOptions> = {}) {
  const { samples, truth, sampleRateHz } = takeOf(spec);
  return { reading: readingOf(samples, sampleRateHz, options), truth, samples, sampleRateHz };
}
