/**
 * What an aftersound too weak or too slow to be told from the prompt sound may have done to a partial's frequency.
 *
 * Prompt sound and aftersound have nearly one frequency but any phase (G. Weinreich, J. Acoust. Soc. Am. 62 (1977) 1474–1484). While the
 * second, of relative amplitude r, loses less than the first, the phase of their sum turns by up to r·Δ·t, Δ the difference of the
 * dampings: a shift of up to r·Δ/2π Hz, which one damped sinusoid takes for its frequency. In a long record, or a loud one, the
 * bend of the decay gives the aftersound away and it is fitted; where it would not have, and other partials of the take do have one,
 * its usual size is counted as uncertainty.
 */
import { rateUncertaintyHz } from './beats.ts';
import type { PartialFit } from './partialFit.ts';

/** Usual relative amplitude (−16 dB) and share of the prompt sound's damping that an aftersound lacks. Chosen from the ranges published. */
const USUAL_RATIO = 0.16;
const USUAL_SLOWNESS = 0.75;
/**
 * How much of that turn is counted. Over random phases a usual aftersound's root mean square is 0.71 of it; ratios and slownesses spread,
 * and the strong and slow ones err most: set where strings with aftersounds of −26 to −14 dB are covered. Smaller, their errors are
 * understated; strings without an aftersound hardly feel it.
 */
const TURN_SHARE = 1.1;
/**
 * Prompt sound and aftersound fitted as two of nearly one frequency: what the covariance at the best fit leaves out of the error. Set on
 * synthetic tones, where one standard uncertainty without it held the truth in 57 of 100 of them; it moves no pitch.
 */
const CROWDED_FACTOR = 1.25;
/** The decay's bend is seen for certain from this many standard deviations. */
const CERTAIN = 5;

/** Aftersound on this share of the partials that could show one makes it likely on the others. */
const LEAST_SHARE = 0.12;
/** Where no partial could have shown one, half of strings are reckoned to have one (a prior, chosen). */
const UNKNOWN_SHARE = 0.5;

/** Partials of one take, as uncertain as an aftersound makes them that was found, or that the take's other partials suggest. */
export function withHiddenAftersound(partials: readonly PartialFit[]): PartialFit[] {
  const share = aftersoundShare(partials);
  return partials.map((partial) => {
    // A record that shows two components well shows most of what there is: a mere supposition does not count there.
    const own = partial.components.length > 1 && share < 1 ? 0 : share;
    const hiddenHz = partial.components.map((component) => own * hiddenAftersoundHz({ ...partial, ...component }));
    const covarianceHz = partial.covarianceHz.map((row, i) =>
      row.map((value, j) => (i === j ? value + hiddenHz[i]! ** 2 : value)),
    );
    return { ...partial, covarianceHz, standardUncertaintyHz: pitchUncertaintyHz(partial, hiddenHz[0]!) };
  });
}

function pitchUncertaintyHz(partial: PartialFit, hiddenHz: number): number {
  if (hasAftersound(partial)) return CROWDED_FACTOR * partial.standardUncertaintyHz;
  return partial.components.length > 1
    ? partial.standardUncertaintyHz
    : Math.hypot(partial.standardUncertaintyHz, hiddenHz);
}

/** How much an unseen aftersound is to be reckoned with: fully, by half, or not at all. */
function aftersoundShare(partials: readonly PartialFit[]): number {
  const withOne = partials.filter(hasAftersound).length;
  const wouldShow = partials.filter(
    (partial) => partial.components.length === 1 && showsBend({ ...partial, ...partial.components[0]! }),
  );
  const open = withOne + wouldShow.length;
  if (open === 0) return UNKNOWN_SHARE;
  return withOne > 0 && withOne >= LEAST_SHARE * open ? 1 : 0;
}

/** Closer to the main component than this many standard uncertainties, another one has its frequency: aftersound, and no beat. */
const SAME_FREQUENCY = 4;

function hasAftersound(partial: PartialFit): boolean {
  const [main, ...others] = partial.components;
  return others.some(
    (other, index) => Math.abs(other.hz - main!.hz) < SAME_FREQUENCY * rateUncertaintyHz(partial, index + 1),
  );
}

function showsBend(tone: SingleTone): boolean {
  return bendOverNoise(tone, USUAL_SLOWNESS * Math.max(tone.dampingPerS, 0)) > CERTAIN;
}

export type SingleTone = {
  readonly amplitude: number;
  readonly dampingPerS: number;
  readonly audibleS: number;
  /** Standard deviation of the noise of one sample, white-noise equivalent. */
  readonly noiseRms: number;
  readonly sampleRateHz: number;
};

/** Standard uncertainty in Hz; nought where an aftersound of the usual size would have shown. */
export function hiddenAftersoundHz(tone: SingleTone): number {
  const difference = USUAL_SLOWNESS * Math.max(tone.dampingPerS, 0);
  const seen = bendOverNoise(tone, difference) / CERTAIN;
  return (TURN_SHARE * USUAL_RATIO * difference) / (2 * Math.PI * (1 + seen ** 2));
}

/**
 * Size of the bend, in standard deviations of the noise: what is left of r·e^(Δ·t) over the record's effective length when its mean
 * and slope, which frequency, damping and amplitude take up, are gone: r·(Δ·T)²/√720 of the tone.
 */
function bendOverNoise(tone: SingleTone, difference: number): number {
  const effectiveS = Math.min(tone.audibleS, 1.5 / Math.max(tone.dampingPerS, 1e-6));
  const energy = (tone.amplitude ** 2 / 2) * effectiveS * tone.sampleRateHz;
  const bend = (USUAL_RATIO * (difference * effectiveS) ** 2) / Math.sqrt(720);
  return (bend * Math.sqrt(energy)) / Math.max(tone.noiseRms, 1e-12);
}
