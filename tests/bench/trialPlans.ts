/** Strings with and without a false beat, and takes of them as a morning at the bridge gives them: as found, then after each trial. */
import type { TrialKind } from '../../src/piano/stringingRecords.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';
import { type FalseBeatSpec, type StringSpec, stringTruth } from '../support/stringTone.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { randomString } from './randomString.ts';

export const TRIED: readonly TrialKind[] = [
  'hold the bridge pin',
  'press the wire at the bridge',
  'seat the wire at the other end',
  'take out its twist',
];

/** What is true: the trial that takes the beat away, or none does, or nothing beats. */
export type TrialTruth = 'one helps' | 'none helps' | 'nothing beats';

export type TrialPlan = {
  readonly seed: number;
  readonly truth: TrialTruth;
  readonly midi: number;
  readonly helping: TrialKind | null;
  readonly beats: readonly FalseBeatSpec[];
  readonly string: StringSpec;
  readonly snrDb: number;
};

const SAMPLE_RATE_HZ = 48000;
const LENGTH_S = 5;
const LEAD_S = 0.3;
const SLOWEST_HZ = 0.3;
const FASTEST_HZ = 3;
const IN_PROPORTION_SHARE = 0.3;

/**
 * A string C3–C7 whose doublet stands on one of its four lowest partials, or on all of them in proportion: 0.3 to 3 Hz, 5 to 15 dB deep,
 * at least one beat within what the partial takes to lose 30 dB, noise 25 to 45 dB down.
 */
export function planTrials(truth: TrialTruth, seed: number): TrialPlan {
  const random = seededRandom(seed);
  for (;;) {
    const midi = 48 + Math.floor(49 * random.uniform());
    const string = randomString(midi, 15, random);
    const beats = randomDoublet(string, random);
    const snrDb = 25 + 20 * random.uniform();
    const tried = TRIED[Math.floor(TRIED.length * random.uniform())]!;
    if (!beats) continue;
    const helping = truth === 'one helps' ? tried : null;
    return { seed, truth, midi, helping, beats: truth === 'nothing beats' ? [] : beats, string, snrDb };
  }
}

function randomDoublet(string: StringSpec, random: SeededRandom): FalseBeatSpec[] | undefined {
  const rateHz = SLOWEST_HZ * (FASTEST_HZ / SLOWEST_HZ) ** random.uniform();
  const depthDb = 5 + 10 * random.uniform();
  const own = 1 + Math.floor(4 * random.uniform());
  const isInProportion = random.uniform() < IN_PROPORTION_SHARE;
  const side = random.uniform() < 0.5 ? 1 : -1;
  const { amplitudes, decayTimeS, partialHz } = stringTruth(string, SAMPLE_RATE_HZ);
  const lifeS = Math.min(LENGTH_S, 0.5 * (decayTimeS[own - 1] ?? 0));
  if (rateHz * lifeS < 1 || (amplitudes[own - 1] ?? 0) < 0.1 * Math.max(...amplitudes)) return undefined;
  const numbers = isInProportion ? [1, 2, 3, 4].filter((number) => number <= partialHz.length) : [own];
  return numbers.map((partialNumber) => ({
    partialNumber,
    splitHz: (side * rateHz * partialNumber) / (isInProportion ? own : partialNumber),
    ratio: Math.tanh((depthDb * Math.LN10) / 40),
  }));
}

/** The take as found, then one after each trial. Strikes differ in level, decay, pitch and in how strongly the beat is excited. */
export function takesOf({ seed, helping, beats, string, snrDb }: TrialPlan): NoteSpec[] {
  return [null, ...TRIED].map((kind, index) => {
    const takeSeed = 16 * seed + index;
    const random = seededRandom(takeSeed);
    const isQuiet = kind !== null && kind === helping;
    const falseBeats = isQuiet ? [] : beats.map((beat) => ({ ...beat, ratio: beat.ratio * scatter(0.1, random) }));
    return {
      strings: [struck({ ...string, falseBeats }, random)],
      durationS: LEAD_S + LENGTH_S,
      leadS: LEAD_S,
      sampleRateHz: SAMPLE_RATE_HZ,
      peak: 0.5 * 10 ** (-0.5 * random.uniform()),
      snrDb: snrDb + 2 * random.normal(),
      hammerNoiseDb: -25,
      seed: takeSeed,
    };
  });
}

function struck(string: StringSpec, random: SeededRandom): StringSpec {
  return {
    ...string,
    offsetCents: (string.offsetCents ?? 0) + 0.1 * random.normal(),
    ...(string.decayTimeS !== undefined && { decayTimeS: string.decayTimeS * scatter(0.05, random) }),
  };
}

function scatter(share: number, random: SeededRandom): number {
  return Math.exp(share * random.normal());
}
