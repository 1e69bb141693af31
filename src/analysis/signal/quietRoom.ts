/**
 * What a microphone hears while nobody plays: how loud the room is, how much of that lies where the top octaves sound, and
 * whether the mains hums in it.
 *
 * Levels are those of a sine of the same power, relative to full scale (dBFS). Band powers come from one windowed spectrum by
 * Parseval's relation. Hum stands at whole multiples of the mains frequency, 50 or 60 Hz, which grids hold to some tenths of a
 * hertz (common practice).
 */
import { powerOfTwoFrom, powerSpectrum } from './fourier.ts';
import { noiseFloorDb, type SpectralPeak, spectralPeaks, spectrumOf } from './spectralPeaks.ts';
import { blackmanHarris } from './window.ts';

export type Hum = {
  readonly mainsHz: 50 | 60;
  /** The strongest of its tones. */
  readonly strongestHz: number;
  /** Of all its tones together. */
  readonly levelDbfs: number;
};

export type QuietRoom = {
  /** From 30 Hz up: what lies below is draught and rumble, and no note. */
  readonly noiseDbfs: number;
  /** From 2 to 8 kHz, where the top two octaves and their second partials sound. */
  readonly trebleNoiseDbfs: number;
  readonly hum: Hum | null;
};

const LOWEST_HZ = 30;
const TREBLE_HZ = [2000, 8000] as const;

/** Silence is −Infinity. @throws {RangeError} for less than a second of sound, in which hum is not told from rumble */
export function measureQuietRoom(samples: Float32Array, sampleRateHz: number): QuietRoom {
  if (!(samples.length >= sampleRateHz))
    throw new RangeError(`samples must last at least 1 s, got ${samples.length} at ${sampleRateHz} Hz`);
  const band = bandLevels(samples, sampleRateHz);
  return {
    noiseDbfs: band(LOWEST_HZ, sampleRateHz / 2),
    trebleNoiseDbfs: band(...TREBLE_HZ),
    hum: findHum(samples, sampleRateHz),
  };
}

function bandLevels(samples: Float32Array, sampleRateHz: number): (fromHz: number, toHz: number) => number {
  const window = blackmanHarris(samples.length);
  const size = powerOfTwoFrom(samples.length);
  const power = powerSpectrum(
    window.map((weight, index) => weight * samples[index]!),
    size,
  );
  const windowPower = window.reduce((sum, weight) => sum + weight * weight, 0);
  return (fromHz, toHz) => {
    const from = Math.ceil((fromHz * size) / sampleRateHz);
    const to = Math.min(power.length, Math.ceil((toHz * size) / sampleRateHz));
    let sum = 0;
    for (let bin = from; bin < to; bin++) sum += power[bin]!;
    // Both halves of the spectrum make the mean square; a sine's is half its squared amplitude.
    return 10 * Math.log10((4 * sum) / (size * windowPower));
  };
}

const MAINS_HZ = [50, 60] as const;
/** Looked for up to this multiple; rectifiers make the even ones, motors and transformers the low ones. */
const MOST_MULTIPLE = 6;
/** As far as a grid strays at the fundamental, and a two-second spectrum's peak with it. */
const STRAY_HZ = 0.5;
/** The height over the noise around it that chance hardly reaches in the dozen places looked at. */
const LEAST_SNR_DB = 15;

/** A hum has its first or second multiple in it: without them a tone at a higher one is more likely a note. */
function findHum(samples: Float32Array, sampleRateHz: number): Hum | null {
  const spectrum = spectrumOf(samples, 0, samples.length, sampleRateHz);
  const limits = { lowestHz: 40, highestHz: 60 * MOST_MULTIPLE + 5, leastSnrDb: LEAST_SNR_DB, most: 40 };
  const peaks = spectralPeaks(spectrum, noiseFloorDb(spectrum, 40), limits);
  const found = MAINS_HZ.map((mainsHz) => ({ mainsHz, tones: peaks.filter((peak) => isMultiple(peak, mainsHz)) }))
    .filter(({ mainsHz, tones }) => tones.some(({ hz }) => Math.round(hz / mainsHz) <= 2))
    .map(({ mainsHz, tones }) => humOf(mainsHz, tones))
    .sort((a, b) => b.levelDbfs - a.levelDbfs);
  return found[0] ?? null;
}

function isMultiple({ hz }: SpectralPeak, mainsHz: number): boolean {
  const multiple = Math.round(hz / mainsHz);
  return multiple >= 1 && multiple <= MOST_MULTIPLE && Math.abs(hz - multiple * mainsHz) < STRAY_HZ * multiple;
}

function humOf(mainsHz: 50 | 60, tones: readonly SpectralPeak[]): Hum {
  const strongest = tones.reduce((most, tone) => (tone.levelDbfs > most.levelDbfs ? tone : most));
  const power = tones.reduce((sum, { levelDbfs }) => sum + 10 ** (levelDbfs / 10), 0);
  return { mainsHz, strongestHz: strongest.hz, levelDbfs: 10 * Math.log10(power) };
}
