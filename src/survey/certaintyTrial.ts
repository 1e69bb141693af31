/**
 * Is a stated uncertainty true? A sound whose partials, F0 and B are known exactly is measured as any take is, and each figure's error is
 * held against the uncertainty that came with it. Over many sounds, two errors in three should be smaller than stated, and nineteen in twenty
 * smaller than twice that (the normal distribution: 68.3 % and 95.4 %).
 *
 * Model: one string's partials, each a single damped sinusoid, and white noise. No room, no hammer, no second string: what a real
 * piano adds to the scatter of its readings is not in it.
 */
import { partialHz, typicalInharmonicity } from '../analysis/tone/typicalInharmonicity.ts';
import { midiToHz } from '../piano/note.ts';
import type { NoteReading } from '../piano/reading.ts';

/** Random numbers from outside: evenly spread in 0 ≤ x < 1, and standard normal. */
export type TrialRandom = { uniform(): number; normal(): number };

export type TrialSound = {
  readonly midi: number;
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  readonly onsetIndex: number;
};

const SAMPLE_RATE_HZ = 22_050;
const LEAD_S = 0.05;
const SOUND_S = 0.8;
const PARTIAL_COUNT = 8;
const LOWEST_MIDI = 40;
const HIGHEST_MIDI = 76;
/** Standard deviation of the noise. */
const NOISE = 10 ** (-60 / 20);

/** One note somewhere in the middle of the compass, up to ten cents off its place. The same random numbers give the same sound. */
export function trialSound(random: TrialRandom): TrialSound {
  const midi = LOWEST_MIDI + Math.floor(random.uniform() * (HIGHEST_MIDI - LOWEST_MIDI + 1));
  const inharmonicityB = typicalInharmonicity(midi) * (0.7 + 0.6 * random.uniform());
  const f0Hz = midiToHz(midi, 440) * 2 ** ((20 * random.uniform() - 10) / 1200);
  const onsetIndex = Math.round(LEAD_S * SAMPLE_RATE_HZ);
  const samples = new Float32Array(onsetIndex + Math.round(SOUND_S * SAMPLE_RATE_HZ));
  for (let partialNumber = 1; partialNumber <= PARTIAL_COUNT; partialNumber++) {
    const frequencyHz = partialHz(f0Hz, inharmonicityB, partialNumber);
    if (frequencyHz > 0.45 * SAMPLE_RATE_HZ) break;
    const amplitude = (0.15 / partialNumber) * (0.5 + random.uniform());
    const dampingPerS = 0.8 + 0.5 * partialNumber * random.uniform();
    const phase = 2 * Math.PI * random.uniform();
    for (let index = onsetIndex; index < samples.length; index++) {
      const timeS = (index - onsetIndex) / SAMPLE_RATE_HZ;
      const sine = Math.sin(2 * Math.PI * frequencyHz * timeS + phase);
      samples[index] = (samples[index] ?? 0) + amplitude * Math.exp(-dampingPerS * timeS) * sine;
    }
  }
  for (let index = 0; index < samples.length; index++) samples[index] = (samples[index] ?? 0) + NOISE * random.normal();
  return { midi, f0Hz, inharmonicityB, samples, sampleRateHz: SAMPLE_RATE_HZ, onsetIndex };
}

/** Error over stated standard uncertainty, of each partial's frequency, of F0 and of B; nothing where another note was named. */
export function errorsInSigmas(truth: TrialSound, reading: NoteReading): number[] {
  const { midi, f0Hz, inharmonicityB } = truth;
  if (reading.midi !== midi) return [];
  const ratio = (value: number | null, sigma: number | null, wanted: number) =>
    value === null || sigma === null ? [] : [(value - wanted) / sigma];
  return [
    ...reading.partials.flatMap(({ partialNumber, frequencyHz, frequencyStandardUncertaintyHz }) =>
      ratio(frequencyHz, frequencyStandardUncertaintyHz, partialHz(f0Hz, inharmonicityB, partialNumber)),
    ),
    ...ratio(reading.f0Hz, reading.f0StandardUncertaintyHz, f0Hz),
    ...ratio(reading.inharmonicityB, reading.inharmonicityBStandardUncertainty, inharmonicityB),
  ];
}

export type SigmaBin = {
  readonly from: number;
  readonly to: number;
  readonly share: number;
  readonly normalShare: number;
};

const BIN_WIDTH = 0.5;
const OUTERMOST = 4;

/** How the errors spread in steps of half an uncertainty, beside the normal distribution; the outermost steps hold everything beyond, too. */
export function spreadOfErrors(errors: readonly number[]): SigmaBin[] {
  const count = (2 * OUTERMOST) / BIN_WIDTH;
  const indexOf = (error: number) => Math.min(count - 1, Math.max(0, Math.floor((error + OUTERMOST) / BIN_WIDTH)));
  const counts = new Array<number>(count).fill(0);
  for (const error of errors) counts[indexOf(error)] = (counts[indexOf(error)] ?? 0) + 1;
  return counts.map((own, index) => {
    const from = -OUTERMOST + index * BIN_WIDTH;
    const to = from + BIN_WIDTH;
    const below = index === 0 ? 0 : normalBelow(from);
    const normalShare = (index === count - 1 ? 1 : normalBelow(to)) - below;
    return { from, to, share: errors.length === 0 ? 0 : own / errors.length, normalShare };
  });
}

export function shareWithin(errors: readonly number[], sigmas: number): number | null {
  if (errors.length === 0) return null;
  return errors.filter((error) => Math.abs(error) <= sigmas).length / errors.length;
}

/** Standard normal distribution function to 1e-7 (Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 26.2.17; from memory). */
export function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const tail = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const above = (tail * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
  return x >= 0 ? 1 - above : above;
}
