/** One synthetic take, made and measured. */
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import type { StringPosition, TakeOutcome } from '../../src/piano/reading.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { type NoteSpec, type NoteTruth, synthesizeNote } from '../support/syntheticString.ts';

export type TakeInput = {
  readonly spec: NoteSpec;
  readonly stringPosition: StringPosition;
  /** Tells the analysis the note and the strike, where only the frequency is the question. */
  readonly isNoteGiven?: boolean;
  /** Random wander of the level, standard deviation in percent. None unless said. */
  readonly tremorPercent?: number;
};

export type TakeResult = { readonly outcome: TakeOutcome; readonly truth: NoteTruth };

export function takeJob({ spec, stringPosition, isNoteGiven, tremorPercent }: TakeInput): TakeResult {
  const { samples, truth } = synthesizeNote(spec);
  if (tremorPercent !== undefined) wanderLevel(samples, spec, tremorPercent / 100);
  const midi = spec.strings[0]!.midi;
  const options = {
    pitchStandardHz: 440,
    stringPosition,
    ...(isNoteGiven ? { midi, onsetIndex: truth.onsetIndex } : {}),
  };
  return { outcome: measureTake(samples, spec.sampleRateHz, options), truth };
}

/** Multiplies with 1 + noise below about 3 Hz. */
function wanderLevel(samples: Float32Array, spec: NoteSpec, deviation: number): void {
  const random = seededRandom(spec.seed + 0x20000);
  const mix = 1 - Math.exp((-2 * Math.PI * WANDER_HZ) / spec.sampleRateHz);
  // One pole leaves the variance mix/(2 − mix) of white noise.
  const scale = deviation * Math.sqrt((2 - mix) / mix);
  let wander = 0;
  for (let index = 0; index < samples.length; index += 1) {
    wander += mix * (random.normal() - wander);
    samples[index]! *= 1 + scale * wander;
  }
}

const WANDER_HZ = 3;
