/** Recordings of many synthetic notes for the tests of the survey, with what happens in a music room, and the truth about them. */
import { addBurst, addHum, type HumSpec, noiseSource } from '../support/roomNoise.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';
import type { StringSpec } from '../support/stringTone.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { HIGHEST_DAMPED_MIDI, typicalDecayTimeS } from '../support/typicalPiano.ts';

type Range = readonly [low: number, high: number];

export type SceneOptions = {
  readonly seed: number;
  readonly sampleRateHz?: number;
  readonly fromMidi?: number;
  readonly toMidi?: number;
  /** Semitones from note to note. */
  readonly step?: number;
  readonly repeatEach?: number;
  /** How long a key is held, seconds. */
  readonly holdS?: Range;
  /** From the key's release to the next strike, seconds. */
  readonly gapS?: Range;
  /** The notes' peaks are spread evenly in dB over this range below LOUDEST_PEAK; 20 unless said. */
  readonly levelRangeDb?: number;
  /** RMS of the softest note's first half second over the noise. No noise unless said. */
  readonly snrDb?: number;
  readonly pinkNoise?: boolean;
  readonly hum?: HumSpec;
  /** No damper falls. */
  readonly isPedalHeld?: boolean;
  /** The strings of a unison stand this far apart at most, in cents; one string a note unless said. */
  readonly unisonSpreadCents?: number;
  /** Share of notes in which every partial has a deep false beat of 0.2 to 8 Hz. */
  readonly falseBeatShare?: number;
  readonly hammerNoiseDb?: number;
  /** Share of notes with a knock in them. */
  readonly knockShare?: number;
  /** Peak of the damper's noise re the note's. */
  readonly releaseNoiseDb?: number;
};

export type SceneNote = { readonly midi: number; readonly onsetIndex: number; readonly peak: number };
export type Scene = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly notes: readonly SceneNote[];
};

type PlannedNote = {
  readonly midi: number;
  readonly atS: number;
  readonly holdS: number;
  readonly peak: number;
  readonly strings: readonly StringSpec[];
};

const LOUDEST_PEAK = 0.4;
const LEAD_S = 0.6;
const TAIL_S = 1;

export function makeScene(options: SceneOptions): Scene {
  const { seed, sampleRateHz = 48000 } = options;
  const random = seededRandom(seed * 7919 + 13);
  const { notes: plan, endS } = planNotes(options, random);
  const sound = new Float64Array(Math.round((endS + TAIL_S) * sampleRateHz));
  const rms = plan.map((note, index) => addNote(sound, sampleRateHz, note, options, seed * 1000 + index));
  for (const note of plan) addBursts(sound, sampleRateHz, note, options, random);
  if (options.snrDb !== undefined) {
    const noise = noiseSource(random, options.pinkNoise ?? false);
    const noiseRms = Math.min(...rms) * 10 ** (-options.snrDb / 20);
    for (let index = 0; index < sound.length; index++) sound[index]! += noiseRms * noise();
  }
  if (options.hum) addHum(sound, sampleRateHz, options.hum, random);
  const notes = plan.map(({ midi, atS, peak }) => ({ midi, onsetIndex: Math.round(atS * sampleRateHz), peak }));
  return { samples: Float32Array.from(sound), sampleRateHz, notes };
}

function planNotes(options: SceneOptions, random: SeededRandom): { notes: PlannedNote[]; endS: number } {
  const { fromMidi = 21, toMidi = 108, step = 1, repeatEach = 1, levelRangeDb = 20 } = options;
  const between = ([low, high]: Range) => low + (high - low) * random.uniform();
  const notes: PlannedNote[] = [];
  let atS = LEAD_S;
  for (let midi = fromMidi; midi <= toMidi; midi += step)
    for (let time = 0; time < repeatEach; time++) {
      const holdS = between(options.holdS ?? [1.2, 3]);
      const peak = LOUDEST_PEAK * 10 ** ((-levelRangeDb * random.uniform()) / 20);
      notes.push({ midi, atS, holdS, peak, strings: stringsOf(midi, options, random) });
      atS += holdS + between(options.gapS ?? [0, 0.4]);
    }
  return { notes, endS: atS };
}

function stringsOf(midi: number, options: SceneOptions, random: SeededRandom): StringSpec[] {
  const { unisonSpreadCents, falseBeatShare = 0 } = options;
  const count = unisonSpreadCents === undefined || midi < 30 ? 1 : midi < 45 ? 2 : 3;
  const isFalse = random.uniform() < falseBeatShare;
  const splitHz = 0.2 * 40 ** random.uniform();
  const ratio = 0.6 + 0.39 * random.uniform();
  const falseBeats = Array.from({ length: 40 }, (_, index) => ({ partialNumber: index + 1, splitHz, ratio }));
  return Array.from({ length: count }, () => ({
    midi,
    offsetCents: (unisonSpreadCents ?? 0) * (random.uniform() - 0.5),
    aftersound: random.uniform() < 0.5 ? { ratio: 0.1, slowDownFactor: 4 } : null,
    ...(isFalse ? { falseBeats } : {}),
  }));
}

const hasDamper = ({ midi }: PlannedNote, { isPedalHeld = false }: SceneOptions) =>
  midi <= HIGHEST_DAMPED_MIDI && !isPedalHeld;

/** @returns the RMS of the note's first half second */
function addNote(sound: Float64Array, rate: number, note: PlannedNote, options: SceneOptions, seed: number): number {
  const onsetIndex = Math.round(note.atS * rate);
  const isDamped = hasDamper(note, options);
  const soundsForS = isDamped ? note.holdS + 1.5 : Math.min(20, 1.5 * typicalDecayTimeS(note.midi) + 2);
  const { samples } = synthesizeNote({
    strings: note.strings,
    leadS: 0,
    durationS: Math.min((sound.length - onsetIndex) / rate, soundsForS),
    sampleRateHz: rate,
    peak: note.peak,
    seed,
    ...(options.hammerNoiseDb === undefined ? {} : { hammerNoiseDb: options.hammerNoiseDb }),
    ...(isDamped ? { releaseAtS: note.holdS } : {}),
  });
  for (let index = 0; index < samples.length; index++) sound[onsetIndex + index]! += samples[index]!;
  const start = samples.subarray(0, rate / 2);
  return Math.sqrt(start.reduce((sum, value) => sum + value * value, 0) / start.length);
}

/** The damper's noise, and knocks of 0 to −14 dB re the note's peak, dull or bright, in its middle half. */
function addBursts(
  sound: Float64Array,
  rate: number,
  note: PlannedNote,
  options: SceneOptions,
  random: SeededRandom,
): void {
  const burst = (afterS: number, levelDb: number, fadeS: number, cornerHz: number) => {
    const startIndex = Math.round((note.atS + afterS) * rate);
    const peak = note.peak * 10 ** (levelDb / 20);
    addBurst(sound, rate, { startIndex, peak, fadeS, cornerHz }, random);
  };
  if (options.releaseNoiseDb !== undefined && hasDamper(note, options))
    burst(note.holdS, options.releaseNoiseDb, 0.012, 900);
  if (random.uniform() >= (options.knockShare ?? 0)) return;
  const afterS = (0.35 + 0.5 * random.uniform()) * note.holdS;
  burst(afterS, -14 * random.uniform(), 0.006 + 0.014 * random.uniform(), 400 + 2500 * random.uniform());
}
