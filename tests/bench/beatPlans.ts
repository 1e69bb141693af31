/** Strings with a false beat of a known rate and depth. */
import { midiToName } from '../../src/piano/note.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';
import { type StringTruth, stringTruth } from '../support/stringTone.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { randomString } from './randomString.ts';

export type Band = readonly [low: number, high: number];

export type BeatPlan = {
  readonly rateBand: Band;
  readonly depthBand: Band;
  readonly midi: number;
  readonly partialNumber: number;
  readonly rateHz: number;
  readonly depthDb: number;
  readonly spec: NoteSpec;
};

const LENGTH_S = 5;
export const BEAT_SNR_DB = 30;
/** Of every second string with a false beat. */
export const NOISY_BEAT_SNR_DB = 15;

/** A note A1–C7 and one of its strong partials on which at least one beat fits into what the partial takes to lose 30 dB. */
export function planFalseBeat(rateBand: Band, depthBand: Band, seed: number): BeatPlan {
  const random = seededRandom(seed);
  const rateHz = within(rateBand, random);
  const depthDb = within(depthBand, random);
  const snrDb = seed % 2 === 0 ? BEAT_SNR_DB : NOISY_BEAT_SNR_DB;
  for (;;) {
    const midi = 33 + Math.floor(64 * random.uniform());
    const string = randomString(midi, 20, random);
    const truth = stringTruth(string, SAMPLE_RATE_HZ);
    const partialNumber = 1 + Math.floor(4 * random.uniform());
    const lifeS = Math.min(LENGTH_S, 0.5 * (truth.decayTimeS[partialNumber - 1] ?? 0));
    if (rateHz * lifeS < 1 || !isStrong(truth, partialNumber)) continue;
    const beat = { partialNumber, splitHz: random.uniform() < 0.5 ? rateHz : -rateHz, ratio: depthToRatio(depthDb) };
    const strings = [{ ...string, falseBeats: [beat] }];
    return { rateBand, depthBand, midi, partialNumber, rateHz, depthDb, spec: { ...beatTake(strings, seed), snrDb } };
  }
}

const SAMPLE_RATE_HZ = 48000;

function within([low, high]: Band, random: SeededRandom): number {
  return low * (high / low) ** random.uniform();
}

/** Within 20 dB of the note's strongest partial. */
function isStrong({ amplitudes }: StringTruth, partialNumber: number): boolean {
  return (amplitudes[partialNumber - 1] ?? 0) > 0.1 * Math.max(...amplitudes);
}

/** Of the weaker of two sinusoids to the stronger, from peak to trough of their sum. */
function depthToRatio(depthDb: number): number {
  const swing = 10 ** (depthDb / 20);
  return (swing - 1) / (swing + 1);
}

export function beatTake(strings: NoteSpec['strings'], seed: number): NoteSpec {
  return {
    strings,
    durationS: LEAD_S + LENGTH_S,
    leadS: LEAD_S,
    sampleRateHz: SAMPLE_RATE_HZ,
    snrDb: BEAT_SNR_DB,
    hammerNoiseDb: -25,
    seed,
  };
}

const LEAD_S = 0.3;

export function describeBeat({ midi, partialNumber, rateHz, depthDb, spec }: BeatPlan): string {
  return `${midiToName(midi)} partial ${partialNumber}, ${rateHz.toFixed(2)} Hz, ${depthDb.toFixed(1)} dB deep, noise ${spec.snrDb} dB down, seed ${spec.seed}`;
}
