/** Recordings of many synthetic notes for the tests of the survey, with everything that happens in a music room and its truth. */
import { addBurst, addHum, type HumSpec, noiseSource } from '../support/roomNoise.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';
import type { StringSpec } from '../support/stringTone.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { HIGHEST_DAMPED_MIDI, typicalDecayTimeS } from '../support/typicalPiano.ts';

export type SceneOptions = {
  readonly seed: number;
  readonly sampleRateHz?: number;
  readonly fromMidi?: number;
  readonly toMidi?: number;
  readonly step?: number;
  /** Key held between these, seconds. */
  readonly holdS?: readonly [number, number];
  readonly gapS?: readonly [number, number];
  /** Peaks are spread evenly in dB over this range below 0.4. */
  readonly levelRangeDb?: number;
  /** RMS of the softest note's first 0.5 s over the noise (a note at the bottom of the level range). */
  readonly snrDb?: number;
  readonly pinkNoise?: boolean;
  readonly hum?: HumSpec;
  readonly isPedalHeld?: boolean;
  /** Strings of a unison and how far they are apart, cents. */
  readonly unisonSpreadCents?: number;
  /** Share of notes with a false beat on every partial. */
  readonly falseBeatShare?: number;
  readonly hammerNoiseDb?: number;
  /** Share of notes with a knock in the middle. */
  readonly knockShare?: number;
  /** Level of the damper's noise re the note's peak. */
  readonly releaseNoiseDb?: number;
  readonly leadS?: number;
  readonly tailS?: number;
  readonly repeatEach?: number;
};

export type SceneNote = { readonly midi: number; readonly onsetIndex: number; readonly peak: number };
export type Scene = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly notes: readonly SceneNote[];
};

export function makeScene(options: SceneOptions): Scene {
  const { seed, sampleRateHz = 48000, fromMidi = 21, toMidi = 108, step = 1, repeatEach = 1 } = options;
  const random = seededRandom(seed * 7919 + 13);
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random.uniform();
  const plan: { midi: number; atS: number; holdS: number; peak: number; strings: StringSpec[] }[] = [];
  let atS = options.leadS ?? 0.6;
  for (let midi = fromMidi; midi <= toMidi; midi += step)
    for (let time = 0; time < repeatEach; time++) {
      const holdS = between(options.holdS ?? [1.2, 3]);
      const peak = 0.4 * 10 ** ((-(options.levelRangeDb ?? 20) * random.uniform()) / 20);
      plan.push({ midi, atS, holdS, peak, strings: stringsOf(midi, options, random) });
      atS += holdS + between(options.gapS ?? [0, 0.4]);
    }
  const total = Math.round((atS + (options.tailS ?? 1)) * sampleRateHz);
  const sound = new Float64Array(total);
  let softestRms = Number.POSITIVE_INFINITY;
  const notes = plan.map((note, index) => {
    const onsetIndex = Math.round(note.atS * sampleRateHz);
    const isDamped = note.midi <= HIGHEST_DAMPED_MIDI && !options.isPedalHeld;
    const made = synthesizeNote({
      strings: note.strings,
      leadS: 0,
      durationS: Math.min(
        (total - onsetIndex) / sampleRateHz,
        isDamped ? note.holdS + 1.5 : Math.min(20, 1.5 * typicalDecayTimeS(note.midi) + 2),
      ),
      sampleRateHz,
      peak: note.peak,
      seed: seed * 1000 + index,
      ...(options.hammerNoiseDb === undefined ? {} : { hammerNoiseDb: options.hammerNoiseDb }),
      ...(isDamped ? { releaseAtS: note.holdS } : {}),
    });
    let power = 0;
    const rmsLength = Math.min(made.samples.length, sampleRateHz / 2);
    for (let i = 0; i < made.samples.length; i++) {
      sound[onsetIndex + i]! += made.samples[i]!;
      if (i < rmsLength) power += made.samples[i]! ** 2;
    }
    softestRms = Math.min(softestRms, Math.sqrt(power / rmsLength));
    const burst = (atIndex: number, peak: number, fadeS: number, cornerHz: number) =>
      addBurst(sound as Float64Array, sampleRateHz, { startIndex: atIndex, peak, fadeS, cornerHz }, random);
    if (options.releaseNoiseDb !== undefined && isDamped)
      burst(
        onsetIndex + Math.round(note.holdS * sampleRateHz),
        note.peak * 10 ** (options.releaseNoiseDb / 20),
        0.012,
        900,
      );
    if (random.uniform() < (options.knockShare ?? 0))
      burst(
        onsetIndex + Math.round((0.35 + 0.5 * random.uniform()) * note.holdS * sampleRateHz),
        note.peak * 10 ** ((-14 + 14 * random.uniform()) / 20),
        0.006 + 0.014 * random.uniform(),
        400 + 2500 * random.uniform(),
      );
    return { midi: note.midi, onsetIndex, peak: note.peak };
  });
  if (options.snrDb !== undefined) {
    const noise = noiseSource(random, options.pinkNoise ?? false);
    const rms = softestRms * 10 ** (-options.snrDb / 20);
    for (let i = 0; i < total; i++) sound[i]! += rms * noise();
  }
  if (options.hum) addHum(sound, sampleRateHz, options.hum, random);
  return { samples: Float32Array.from(sound), sampleRateHz, notes };
}

function stringsOf(midi: number, options: SceneOptions, random: SeededRandom): StringSpec[] {
  const count = options.unisonSpreadCents === undefined ? 1 : midi < 30 ? 1 : midi < 45 ? 2 : 3;
  const withFalseBeat = random.uniform() < (options.falseBeatShare ?? 0);
  const splitHz = 0.2 * 40 ** random.uniform();
  const ratio = 0.6 + 0.39 * random.uniform();
  return Array.from({ length: count }, () => ({
    midi,
    offsetCents: 20 * (random.uniform() - 0.5) * 0 + (options.unisonSpreadCents ?? 0) * (random.uniform() - 0.5),
    aftersound: random.uniform() < 0.5 ? { ratio: 0.1, slowDownFactor: 4 } : null,
    ...(withFalseBeat
      ? { falseBeats: Array.from({ length: 40 }, (_, index) => ({ partialNumber: index + 1, splitHz, ratio })) }
      : {}),
  }));
}
