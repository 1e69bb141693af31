/**
 * The frequency of one steady or slowly dying tone, a fork's or a generator's, as a device's clock counts it.
 *
 * Model: a single damped sinusoid in noise, fitted by least squares in a narrow band around its peak (signal/dampedSinusoids.ts). It
 * does not hold for a tone that bends, beats or is broken off and taken up again: what it leaves is then no noise, and that is the
 * answer. The uncertainty is the fit's own, or what four parts of the stretch differ by beyond theirs, where that is more.
 */
import { searchComponents } from '../signal/componentSearch.ts';
import { covarianceOf, energyOf, type Series } from '../signal/dampedSinusoids.ts';
import { noiseFloorDb, spectralPeaks, spectrumOf } from '../signal/spectralPeaks.ts';
import { extractSubband, noiseDensityRatio, type Subband } from '../signal/subband.ts';

export type ReferenceOutcome =
  | {
      readonly measured: true;
      readonly hz: number;
      readonly standardUncertaintyHz: number;
      /** Of the stretch that was used. */
      readonly durationS: number;
    }
  | { readonly measured: false; readonly reason: 'too-short' | 'not-heard' | 'unsteady' };

/** 1 ppm of 440 Hz is one turn in 38 minutes; ten seconds show it at some 60 dB above the noise, and average a hand's unrest. */
export const LEAST_REFERENCE_S = 10;
/** How far from what is expected the tone may lie: far more than any clock or fork, less than a semitone. */
const REACH = 0.02;
const LEAST_SNR_DB = 20;
/** The band is this wide: beats of a table that sounds along stay outside it or are seen. */
const SPACING_HZ = 20;
/** A fork's blow and its overtones are over by then. */
const SETTLING_S = 1;
/** Ratio of powers, 30 dB: further down a dying tone adds nothing. */
const SUNK = 1e-3;
/** Of the energy in the band, what one sinusoid has to account for. A jump of 10 ms in the middle of 440 Hz leaves more than that. */
const LEAST_SHARE = 0.99;
const PART_COUNT = 4;

/**
 * @param expectedHz within 2 % of the tone
 * @throws {RangeError} for an expected frequency that is not between 50 and 5000 Hz
 */
export function measureReference(samples: Float32Array, sampleRateHz: number, expectedHz: number): ReferenceOutcome {
  if (!(expectedHz >= 50 && expectedHz <= 5000))
    throw new RangeError(`expectedHz must be from 50 to 5000, got ${expectedHz}`);
  if (samples.length < LEAST_REFERENCE_S * sampleRateHz) return { measured: false, reason: 'too-short' };
  const peakHz = findPeak(samples, sampleRateHz, expectedHz);
  if (peakHz === undefined) return { measured: false, reason: 'not-heard' };
  const subband = extractSubband(samples, {
    sampleRateHz,
    startIndex: 0,
    endIndex: samples.length,
    centreHz: peakHz,
    spacingHz: SPACING_HZ,
    leastRateHz: SPACING_HZ,
  });
  const series = soundingStretch(subband);
  const durationS = series.re.length / subband.rateHz;
  if (durationS < LEAST_REFERENCE_S - 2 * SETTLING_S) return { measured: false, reason: 'too-short' };
  const whole = fitOne(subband, series);
  if (!whole || whole.share < LEAST_SHARE) return { measured: false, reason: 'unsteady' };
  const standardUncertaintyHz = Math.max(whole.standardUncertaintyHz, partsUncertaintyHz(subband, series));
  return { measured: true, hz: whole.hz, standardUncertaintyHz, durationS };
}

/** Whether a tone near what is expected sounds in a second or more of sound. */
export function isToneThere(samples: Float32Array, sampleRateHz: number, expectedHz: number): boolean {
  return findPeak(samples, sampleRateHz, expectedHz) !== undefined;
}

/** The strongest peak near what is expected, in the middle of the sound; its place is good to some tenths of a hertz. */
function findPeak(samples: Float32Array, sampleRateHz: number, expectedHz: number): number | undefined {
  const length = Math.min(samples.length, Math.round(LEAST_REFERENCE_S * sampleRateHz));
  const start = (samples.length - length) >> 1;
  const spectrum = spectrumOf(samples, start, start + length, sampleRateHz);
  const peaks = spectralPeaks(spectrum, noiseFloorDb(spectrum, 50), {
    lowestHz: expectedHz * (1 - REACH),
    highestHz: expectedHz * (1 + REACH),
    leastSnrDb: LEAST_SNR_DB,
    most: 1,
  });
  return peaks[0]?.hz;
}

/** From a second after its loudest moment, or after the beginning of an even tone, to where it has sunk. */
function soundingStretch(subband: Subband): Series {
  const powers = subband.re.map((re, index) => re ** 2 + subband.im[index]! ** 2);
  const loudest = powers.reduce((most, power) => Math.max(most, power), 0);
  const begin = powers.findIndex((power) => power > loudest / 4) + Math.round(SETTLING_S * subband.rateHz);
  const sunk = powers.findIndex((power, index) => index > begin && power < SUNK * loudest);
  const end = sunk === -1 ? powers.length : sunk;
  return { re: subband.re.subarray(begin, end), im: subband.im.subarray(begin, end) };
}

type OneFit = { readonly hz: number; readonly standardUncertaintyHz: number; readonly share: number };

function fitOne(subband: Subband, series: Series): OneFit | undefined {
  const step = searchComponents(series, { mostComponents: 1, bandRad: 0.5 * Math.PI })?.steps[0];
  const component = step?.fit.components[0];
  const covariance = step && covarianceOf(series, step.fit.components);
  if (!step || !component || !covariance) return undefined;
  const hzPerRad = subband.rateHz / (2 * Math.PI);
  const offsetHz = component.frequencyRad * hzPerRad;
  const density = step.variance * noiseDensityRatio(subband, offsetHz);
  return {
    hz: subband.centreHz + offsetHz,
    standardUncertaintyHz: Math.sqrt(density * covariance[0]!) * hzPerRad,
    share: 1 - step.fit.residualEnergy / Math.max(energyOf(series), 1e-300),
  };
}

/** What the parts differ by beyond their own uncertainties, as the uncertainty of their mean; 0 where they agree. */
function partsUncertaintyHz(subband: Subband, series: Series): number {
  const length = Math.floor(series.re.length / PART_COUNT);
  const parts = Array.from({ length: PART_COUNT }, (_, index) => {
    const [from, to] = [index * length, (index + 1) * length];
    return fitOne(subband, { re: series.re.subarray(from, to), im: series.im.subarray(from, to) });
  }).filter((part) => part !== undefined);
  if (parts.length < 2) return 0;
  const mean = parts.reduce((sum, { hz }) => sum + hz, 0) / parts.length;
  const scatter = parts.reduce((sum, { hz }) => sum + (hz - mean) ** 2, 0) / (parts.length - 1);
  const own = parts.reduce((sum, part) => sum + part.standardUncertaintyHz ** 2, 0) / parts.length;
  return Math.sqrt(Math.max(0, scatter - own) / parts.length);
}
