/**
 * How fast a partial and a note die: times for 60 dB.
 *
 * Two strings or two directions of vibration coupled at the bridge give a fast prompt sound and a slow aftersound (G. Weinreich,
 * J. Acoust. Soc. Am. 62 (1977) 1474–1484); each is one damped sinusoid here. T60 = ln(1000)/damping.
 */
import { type FittedComponent, firstSecondEnergy, type PartialFit } from './partialFit.ts';

const LN_1000 = Math.log(1000);
/** Dampings closer than this factor are one decay. */
const LEAST_DAMPING_RATIO = 1.6;
/** A slower component weaker than this at the start and never rising above is noise of the fit. */
const LEAST_AFTERSOUND_DB = -45;
/** Longer than any string rings; a fit that says more has seen no decay. */
const LONGEST_S = 120;

export type DecayTimes = { readonly promptDecayTimeS: number | null; readonly afterDecayTimeS: number | null };

export function decayTimeS(component: { readonly dampingPerS: number }): number {
  return Math.min(LONGEST_S, LN_1000 / Math.max(component.dampingPerS, 1e-9));
}

/** The prompt sound's and the aftersound's time; the second is null where the decay is single. */
export function decayTimesOf(partial: PartialFit): DecayTimes {
  const decaying = partial.components.filter((component) => component.dampingPerS > 0.02);
  if (decaying.length === 0) return { promptDecayTimeS: null, afterDecayTimeS: null };
  const loudest = decaying.reduce((a, b) => (b.amplitude > a.amplitude ? b : a));
  const isPrompt = (component: FittedComponent) => component.dampingPerS > loudest.dampingPerS / LEAST_DAMPING_RATIO;
  const prompt = decaying.filter(isPrompt);
  const after = decaying.filter(
    (component) => !isPrompt(component) && levelDb(component, loudest) > LEAST_AFTERSOUND_DB,
  );
  return {
    promptDecayTimeS: decayTimeS({ dampingPerS: meanDamping(prompt) }),
    afterDecayTimeS: after.length > 0 ? decayTimeS({ dampingPerS: meanDamping(after) }) : null,
  };
}

function levelDb(component: FittedComponent, reference: FittedComponent): number {
  return 20 * Math.log10(component.amplitude / reference.amplitude);
}

function meanDamping(components: readonly FittedComponent[]): number {
  const energy = components.reduce((sum, component) => sum + component.amplitude ** 2, 0);
  return components.reduce((sum, component) => sum + component.amplitude ** 2 * component.dampingPerS, 0) / energy;
}

/**
 * How long a note lives: twice the time in which all its partials together lose 30 dB, from their fitted decays. Measured over 30 dB
 * and stated for 60, as room acoustics does (ISO 3382-1, T30), since the last 30 dB are mostly one weak slow component that a
 * short record cannot know. It does not depend on the microphone's distance as a level would. Null where nothing decays.
 */
export function lifeTimeS(partials: readonly PartialFit[]): number | null {
  const components = partials.flatMap((partial) => partial.components).filter((c) => c.dampingPerS > 0.02);
  if (components.length === 0) return null;
  const energyAt = (timeS: number) =>
    components.reduce((sum, c) => sum + c.amplitude ** 2 * Math.exp(-2 * c.dampingPerS * timeS), 0);
  const target = 1e-3 * energyAt(0);
  let low = 0;
  let high = LONGEST_S / 2;
  if (energyAt(high) > target) return LONGEST_S;
  for (let i = 0; i < 40; i++) {
    const middle = 0.5 * (low + high);
    if (energyAt(middle) > target) low = middle;
    else high = middle;
  }
  return 2 * high;
}

/** Total energy of a partial's first second. */
export function partialEnergy(partial: PartialFit): number {
  return partial.components.reduce((sum, component) => sum + firstSecondEnergy(component), 0);
}

/**
 * How long notes of a concert grand live, as `lifeTimeS` measures it: MIDI number and seconds, rounded, between which it is
 * interpolated in the logarithm. Standing: measured by us on an open data set (the tests name it); small pianos are shorter by half.
 */
const TYPICAL_LIFE: readonly (readonly [midi: number, lifeS: number])[] = [
  [21, 25],
  [48, 8],
  [60, 6],
  [72, 3.5],
  [84, 2],
  [96, 0.9],
  [108, 0.3],
];

/** @example typicalLifeTimeS(84) // 2 */
export function typicalLifeTimeS(midi: number): number {
  const upper = TYPICAL_LIFE.findIndex(([knot]) => knot >= midi);
  if (upper === 0) return TYPICAL_LIFE[0]![1];
  if (upper < 0) return TYPICAL_LIFE.at(-1)![1];
  const [lowMidi, lowS] = TYPICAL_LIFE[upper - 1]!;
  const [highMidi, highS] = TYPICAL_LIFE[upper]!;
  return lowS * (highS / lowS) ** ((midi - lowMidi) / (highMidi - lowMidi));
}
