/**
 * Piano-like notes with a known truth, and noise: one to three strings struck once.
 * A whole survey of them is made by syntheticSurvey.ts; what is typical of a note stands in typicalPiano.ts.
 */
import { addBurst, addHum, type HumSpec, noiseSource } from './roomNoise.ts';
import { seededRandom } from './seededRandom.ts';
import { addStringTone, type StringSpec, type StringTruth } from './stringTone.ts';
import { typicalAttackS, typicalDampedDecayTimeS } from './typicalPiano.ts';

export type NoteSpec = {
  /** One to three strings that sound together; a mistuned unison by their `offsetCents`. */
  readonly strings: readonly StringSpec[];
  /** Whole length, the lead included. */
  readonly durationS: number;
  readonly sampleRateHz: number;
  /** Before the strike; noise and hum sound there too. 0.1 unless said. */
  readonly leadS?: number;
  /** Largest sample of the tone alone, 0 to 1; 0.5 unless said. What is added to it is not clipped. */
  readonly peak?: number;
  /** RMS of the tone over the first 0.5 s after the strike to the RMS of the noise. No noise unless said. */
  readonly snrDb?: number;
  /** The noise is pink instead of white. */
  readonly pinkNoise?: boolean;
  readonly hum?: HumSpec;
  /** A dull knock, `atS` from the start of the recording, its peak at `levelDb` re full scale. */
  readonly knock?: { readonly atS: number; readonly levelDb: number };
  /** Peak of the blow's own noise re the tone's peak. None unless said. */
  readonly hammerNoiseDb?: number;
  /** The damper falls this long after the strike. */
  readonly releaseAtS?: number;
  readonly seed: number;
};

export type NoteTruth = {
  readonly onsetIndex: number;
  readonly onsetS: number;
  /** RMS of the noise that was added; 0 if none. */
  readonly noiseRms: number;
  /** What the amplitudes of the strings were multiplied with to reach the peak. */
  readonly scale: number;
  readonly strings: readonly StringTruth[];
};

export type SyntheticNote = { readonly samples: Float32Array; readonly truth: NoteTruth };

/** @example synthesizeNote({ strings: [{ midi: 69 }], durationS: 3, sampleRateHz: 48000, snrDb: 40, seed: 1 }) */
export function synthesizeNote(spec: NoteSpec): SyntheticNote {
  const random = seededRandom(spec.seed);
  const { sampleRateHz, peak = 0.5 } = spec;
  const onsetIndex = Math.round((spec.leadS ?? 0.1) * sampleRateHz);
  const sound = new Float64Array(Math.round(spec.durationS * sampleRateHz));
  const strings = spec.strings.map((string) => addStringTone(sound, onsetIndex, sampleRateHz, string, random));
  shapeAttack(sound, onsetIndex, sampleRateHz, spec);
  const scale = scaleToPeak(sound, peak);
  const noiseRms = spec.snrDb === undefined ? 0 : toneRms(sound, onsetIndex, sampleRateHz) * 10 ** (-spec.snrDb / 20);
  addRoom(sound, onsetIndex, noiseRms, spec);
  return {
    samples: Float32Array.from(sound),
    truth: { onsetIndex, onsetS: onsetIndex / sampleRateHz, noiseRms, scale, strings },
  };
}

/** The blow builds the tone up smoothly; the damper, once it falls, takes it away. */
function shapeAttack(sound: Float64Array, onsetIndex: number, sampleRateHz: number, spec: NoteSpec): void {
  const midi = spec.strings[0]?.midi ?? 60;
  const attack = Math.max(1, Math.round(typicalAttackS(midi) * sampleRateHz));
  for (let index = 0; index < attack && onsetIndex + index < sound.length; index += 1)
    sound[onsetIndex + index]! *= 0.5 - 0.5 * Math.cos((Math.PI * index) / attack);
  if (spec.releaseAtS === undefined) return;
  const step = Math.exp(-Math.log(1000) / (typicalDampedDecayTimeS(midi) * sampleRateHz));
  let left = 1;
  for (let index = onsetIndex + Math.round(spec.releaseAtS * sampleRateHz); index < sound.length; index += 1) {
    left *= step;
    sound[index]! *= left;
  }
}

function scaleToPeak(sound: Float64Array, peak: number): number {
  const largest = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const scale = largest > 0 ? peak / largest : 1;
  for (let index = 0; index < sound.length; index += 1) sound[index]! *= scale;
  return scale;
}

function toneRms(sound: Float64Array, onsetIndex: number, sampleRateHz: number): number {
  const stretch = sound.subarray(onsetIndex, onsetIndex + Math.round(0.5 * sampleRateHz));
  return Math.sqrt(stretch.reduce((sum, value) => sum + value * value, 0) / Math.max(1, stretch.length));
}

function addRoom(sound: Float64Array, onsetIndex: number, noiseRms: number, spec: NoteSpec): void {
  // A random sequence of its own, so that a knock or hum changes nothing in the strings' phases.
  const random = seededRandom(spec.seed + 0x10000);
  const { sampleRateHz, peak = 0.5 } = spec;
  if (noiseRms > 0) {
    const noise = noiseSource(random, spec.pinkNoise ?? false);
    for (let index = 0; index < sound.length; index += 1) sound[index]! += noiseRms * noise();
  }
  if (spec.hum) addHum(sound, sampleRateHz, spec.hum, random);
  if (spec.hammerNoiseDb !== undefined) {
    const blow = { startIndex: onsetIndex, peak: peak * 10 ** (spec.hammerNoiseDb / 20), fadeS: 0.015, cornerHz: 2000 };
    addBurst(sound, sampleRateHz, blow, random);
  }
  if (spec.knock) {
    const { atS, levelDb } = spec.knock;
    const knock = {
      startIndex: Math.round(atS * sampleRateHz),
      peak: 10 ** (levelDb / 20),
      fadeS: 0.02,
      cornerHz: 400,
    };
    addBurst(sound, sampleRateHz, knock, random);
  }
}
