/** Notes as somebody plays them, with a cough and a knock between, as a file for the microphone; and what is true about them. */
import { writeWave } from '../../../src/files/audio/writeWave.ts';
import { addBurst, noiseSource } from '../../support/roomNoise.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { synthesizeSurvey } from '../../support/syntheticSurvey.ts';

const SAMPLE_RATE_HZ = 44100;
/** As long as a note is held unless said. */
const HOLD_S = 1.35;
const GAP_S = 0.15;
/** A last take is told a second after its end at most, while sound comes in. */
const TAIL_S = 2.5;
/** Before what disturbs, and after it. */
const ROOM_FOR_NOISE_S = 1.5;

export type Played = { readonly midi: number; readonly followedBy?: 'cough' | 'knock'; readonly holdS?: number };
export type PlayedNote = { readonly midi: number; readonly offsetCents: number; readonly onsetS: number };
export type PlayedNotes = {
  readonly notes: readonly PlayedNote[];
  readonly wave: Buffer;
  readonly durationS: number;
};

/** @param snrDb the softest note's first half second over the noise; a quiet room unless said */
export function playNotes(played: readonly Played[], { snrDb, seed }: { snrDb?: number; seed: number }): PlayedNotes {
  const offsetOf = (midi: number) => ((midi * 7) % 13) - 6;
  const { samples, truth } = synthesizeSurvey({
    notes: played.map(({ midi, followedBy, holdS = HOLD_S }) => ({
      strings: [{ midi, offsetCents: offsetOf(midi) }],
      holdS,
      gapS: followedBy ? ROOM_FOR_NOISE_S : GAP_S,
    })),
    sampleRateHz: SAMPLE_RATE_HZ,
    gapS: GAP_S,
    leadS: 1,
    tailS: TAIL_S,
    seed,
  });
  const sound = Float64Array.from(samples);
  const random = seededRandom(seed + 500);
  for (const [index, { followedBy, holdS = HOLD_S }] of played.entries()) {
    const releasedAt = (truth[index]?.onsetIndex ?? 0) + holdS * SAMPLE_RATE_HZ;
    for (const burst of followedBy === undefined ? [] : BURSTS[followedBy])
      addBurst(
        sound,
        SAMPLE_RATE_HZ,
        { ...burst, startIndex: Math.round(releasedAt + burst.atS * SAMPLE_RATE_HZ) },
        random,
      );
  }
  const softestRms = Math.min(...truth.map(({ onsetIndex }) => rmsFrom(samples, onsetIndex)));
  const noiseRms = snrDb === undefined ? QUIET_ROOM_RMS : softestRms * 10 ** (-snrDb / 20);
  const noise = noiseSource(random, false);
  const heard = Float32Array.from(sound, (value) => value + noiseRms * noise());
  return {
    notes: truth.map(({ midi, onsetS }) => ({ midi, onsetS, offsetCents: offsetOf(midi) })),
    wave: Buffer.from(writeWave(heard, SAMPLE_RATE_HZ, 'float')),
    durationS: heard.length / SAMPLE_RATE_HZ,
  };
}

/** −75 dB re full scale. */
const QUIET_ROOM_RMS = 10 ** (-75 / 20);

/** A cough is two rough bursts of breath, a knock one short dull blow on wood. */
const BURSTS = {
  cough: [
    { atS: 0.5, peak: 0.12, fadeS: 0.07, cornerHz: 1400 },
    { atS: 0.72, peak: 0.08, fadeS: 0.09, cornerHz: 1100 },
  ],
  knock: [{ atS: 0.6, peak: 0.15, fadeS: 0.012, cornerHz: 700 }],
} as const;

function rmsFrom(samples: Float32Array, from: number): number {
  const first = samples.subarray(from, from + SAMPLE_RATE_HZ / 2);
  return Math.sqrt(first.reduce((sum, value) => sum + value * value, 0) / first.length);
}
