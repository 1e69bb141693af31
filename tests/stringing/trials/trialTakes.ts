/** Takes of one synthetic string with a false beat, and of the same string without it, as trials at the bridge would give them. */
import { measureTake } from '../../../src/analysis/tone/measureTake.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { type FalseBeatSpec, type StringSpec, stringTruth } from '../../support/stringTone.ts';
import { synthesizeNote } from '../../support/syntheticString.ts';
import { typicalB, typicalDecayTimeS, typicalStrikePosition } from '../../support/typicalPiano.ts';

export type BeatingString = {
  readonly string: StringSpec;
  readonly beats: readonly FalseBeatSpec[];
  readonly snrDb: number;
};

const SAMPLE_RATE_HZ = 24000;
const LENGTH_S = 3.5;

/**
 * A string C3–C7 with a false beat on one of its four lowest partials, or with one in proportion to the partial number on all of them:
 * 0.5 to 5 Hz, 5 to 15 dB deep, at least one beat within the half of the partial's decay.
 */
export function beatingString(seed: number): BeatingString {
  const random = seededRandom(seed);
  for (;;) {
    const midi = 48 + Math.floor(49 * random.uniform());
    const string: StringSpec = {
      midi,
      offsetCents: 10 * random.normal(),
      inharmonicityB: typicalB(midi) * Math.exp(0.2 * random.normal()),
      decayTimeS: typicalDecayTimeS(midi) * Math.exp(0.2 * random.normal()),
      strikePosition: typicalStrikePosition(midi) * (0.85 + 0.3 * random.uniform()),
      aftersound: random.uniform() < 0.5 ? null : { ratio: 0.1, slowDownFactor: 3 },
    };
    const rateHz = 0.5 * 10 ** random.uniform();
    const ratio = 0.28 + 0.42 * random.uniform();
    const partialNumber = 1 + Math.floor(4 * random.uniform());
    const isProportional = random.uniform() < 0.3;
    const truth = stringTruth(string, SAMPLE_RATE_HZ);
    const lifeS = Math.min(LENGTH_S, 0.5 * (truth.decayTimeS[partialNumber - 1] ?? 0));
    const isLoud = (truth.amplitudes[partialNumber - 1] ?? 0) > 0.1 * Math.max(...truth.amplitudes);
    if (rateHz * lifeS < 1 || !isLoud) continue;
    const numbers = isProportional
      ? [1, 2, 3, 4].filter((number) => number <= truth.partialHz.length)
      : [partialNumber];
    const beats = numbers.map((number) => ({
      partialNumber: number,
      splitHz: isProportional ? (rateHz * number) / partialNumber : rateHz,
      ratio,
    }));
    return { string, beats, snrDb: 25 + 15 * random.uniform() };
  }
}

/** One take; strikes differ in level, in the phases and a little in how strongly the beat is excited. */
export function takeOf(
  { string, snrDb }: BeatingString,
  beats: readonly FalseBeatSpec[],
  seed: number,
): NoteReading | undefined {
  const random = seededRandom(seed);
  const falseBeats = beats.map((beat) => ({ ...beat, ratio: beat.ratio * Math.exp(0.1 * random.normal()) }));
  const { samples } = synthesizeNote({
    strings: [{ ...string, falseBeats }],
    durationS: 0.3 + LENGTH_S,
    leadS: 0.3,
    sampleRateHz: SAMPLE_RATE_HZ,
    peak: 0.3 + 0.2 * random.uniform(),
    snrDb,
    hammerNoiseDb: -25,
    seed,
  });
  const outcome = measureTake(samples, SAMPLE_RATE_HZ, { pitchStandardHz: 440, stringPosition: 2, midi: string.midi });
  return outcome.found ? outcome.reading : undefined;
}

/** `count` takes with, or without, the string's beats. */
export function takesOf(string: BeatingString, hasBeats: boolean, count: number, seed: number): NoteReading[] {
  const beats = hasBeats ? string.beats : [];
  return Array.from({ length: count }, (_, index) => takeOf(string, beats, seed + index)).flatMap((take) => take ?? []);
}
