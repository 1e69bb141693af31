/**
 * Two sounds made equally loud: equal energy in the first second after the strike, which is what the ear takes for the loudness of a struck
 * string (common practice; no weighting by frequency, since both are the same note). Where one is shorter, in as much as both have.
 */

export type StruckSound = {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** Index of the strike. */
  readonly onsetIndex: number;
};

export type LeveledSound = StruckSound & {
  /** By how much it was made louder. */
  readonly gainDb: number;
};

const ENERGY_S = 1;
/** So much is heard before the strike and after it. */
const LEAD_S = 0.1;
const LONGEST_S = 8;
/** The louder peak reaches this share of full scale, so that nothing is clipped on the way. */
const PEAK = 0.9;
const FADE_IN_S = 0.005;
const FADE_OUT_S = 0.05;

/** @returns both cut to the same lead and, at most, eight seconds; null where one of them is silent */
export function equalLoudness(one: StruckSound, other: StruckSound): [LeveledSound, LeveledSound] | null {
  const cut = [cutToTake(one), cutToTake(other)] as const;
  const heardS = Math.min(
    ENERGY_S,
    ...cut.map((sound) => (sound.samples.length - sound.onsetIndex) / sound.sampleRateHz),
  );
  const [first, second] = cut.map((sound) => rootMeanSquare(sound, heardS));
  if (!first || !second) return null;
  const peak = Math.max(peakOf(cut[0]) / first, peakOf(cut[1]) / second);
  return [scaled(cut[0], PEAK / (peak * first)), scaled(cut[1], PEAK / (peak * second))];
}

function cutToTake({ samples, sampleRateHz, onsetIndex }: StruckSound): StruckSound {
  const start = Math.max(0, onsetIndex - Math.round(LEAD_S * sampleRateHz));
  const end = Math.min(samples.length, onsetIndex + Math.round(LONGEST_S * sampleRateHz));
  return { samples: samples.slice(start, end), sampleRateHz, onsetIndex: onsetIndex - start };
}

/** Over the first part of the sound, from its strike. */
function rootMeanSquare({ samples, sampleRateHz, onsetIndex }: StruckSound, heardS: number): number {
  const part = samples.subarray(onsetIndex, onsetIndex + Math.round(heardS * sampleRateHz));
  const energy = part.reduce((sum, sample) => sum + sample * sample, 0);
  return part.length === 0 ? 0 : Math.sqrt(energy / part.length);
}

function peakOf({ samples }: StruckSound): number {
  return samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);
}

/** With soft ends, so that nothing clicks. */
function scaled(sound: StruckSound, gain: number): LeveledSound {
  const { samples, sampleRateHz } = sound;
  const fadeIn = FADE_IN_S * sampleRateHz;
  const fadeOut = FADE_OUT_S * sampleRateHz;
  const faded = samples.map((sample, index) => {
    const share = Math.min(1, index / fadeIn, (samples.length - 1 - index) / fadeOut);
    return gain * sample * share;
  });
  return { ...sound, samples: faded, gainDb: 20 * Math.log10(gain) };
}
