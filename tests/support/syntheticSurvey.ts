/** One long recording of many synthetic notes played one after another, with the truth of each. */
import { addHum, type HumSpec, noiseSource } from './roomNoise.ts';
import { seededRandom } from './seededRandom.ts';
import type { StringSpec } from './stringTone.ts';
import { type NoteTruth, synthesizeNote } from './syntheticString.ts';
import { HIGHEST_DAMPED_MIDI, typicalDecayTimeS } from './typicalPiano.ts';

export type SurveyNoteSpec = {
  readonly strings: readonly StringSpec[];
  /** How long the key is held. */
  readonly holdS: number;
  /** From the key's release to the next strike; the survey's `gapS` unless said. */
  readonly gapS?: number;
  readonly peak?: number;
  readonly hammerNoiseDb?: number;
};

export type SurveySpec = {
  readonly notes: readonly SurveyNoteSpec[];
  readonly sampleRateHz: number;
  readonly gapS: number;
  /** Silence before the first strike; 0.5 unless said. */
  readonly leadS?: number;
  /** After the last release; 0.5 unless said. */
  readonly tailS?: number;
  /** RMS of the room's noise re full scale. No noise unless said. */
  readonly noiseDbfs?: number;
  readonly pinkNoise?: boolean;
  readonly hum?: HumSpec;
  readonly seed: number;
};

export type SurveyNoteTruth = NoteTruth & { readonly midi: number };
export type SyntheticSurvey = { readonly samples: Float32Array; readonly truth: readonly SurveyNoteTruth[] };

/**
 * Notes up to HIGHEST_DAMPED_MIDI are damped when the key is released (the damper needs a while); notes above it have no damper
 * and ring on under the next ones.
 */
export function synthesizeSurvey(spec: SurveySpec): SyntheticSurvey {
  const { sampleRateHz } = spec;
  let strikeS = spec.leadS ?? 0.5;
  const strikesS = spec.notes.map((note) => {
    const atS = strikeS;
    strikeS += note.holdS + (note.gapS ?? spec.gapS);
    return atS;
  });
  const samples = new Float64Array(Math.round((strikeS + (spec.tailS ?? 0.5)) * sampleRateHz));
  const truth = spec.notes.map((note, index) =>
    addNote(samples, Math.round(strikesS[index]! * sampleRateHz), note, spec.seed + 1 + index, sampleRateHz),
  );
  addRoom(samples, spec);
  return { samples: Float32Array.from(samples), truth };
}

function addNote(
  out: Float64Array,
  onsetIndex: number,
  note: SurveyNoteSpec,
  seed: number,
  sampleRateHz: number,
): SurveyNoteTruth {
  const midi = note.strings[0]?.midi ?? 60;
  const isDamped = midi <= HIGHEST_DAMPED_MIDI;
  const soundsForS = isDamped ? note.holdS + 2 : note.holdS + 4 * typicalDecayTimeS(midi);
  const { samples, truth } = synthesizeNote({
    strings: note.strings,
    durationS: Math.min(soundsForS, (out.length - onsetIndex) / sampleRateHz),
    sampleRateHz,
    leadS: 0,
    seed,
    ...(note.peak === undefined ? {} : { peak: note.peak }),
    ...(note.hammerNoiseDb === undefined ? {} : { hammerNoiseDb: note.hammerNoiseDb }),
    ...(isDamped ? { releaseAtS: note.holdS } : {}),
  });
  for (let index = 0; index < samples.length && onsetIndex + index < out.length; index += 1)
    out[onsetIndex + index]! += samples[index]!;
  return { ...truth, midi, onsetIndex, onsetS: onsetIndex / sampleRateHz };
}

function addRoom(samples: Float64Array, spec: SurveySpec): void {
  const random = seededRandom(spec.seed);
  if (spec.noiseDbfs !== undefined) {
    const noise = noiseSource(random, spec.pinkNoise ?? false);
    const noiseRms = 10 ** (spec.noiseDbfs / 20);
    for (let index = 0; index < samples.length; index += 1) samples[index]! += noiseRms * noise();
  }
  if (spec.hum) addHum(samples, spec.sampleRateHz, spec.hum, random);
}
