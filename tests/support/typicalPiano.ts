/**
 * What an ordinary piano is like, note by note: the middle of the range that synthetic strings are made from.
 * Levels, counts and decay times are from memory (practice and common figures), good enough to be realistic and no more.
 */

type Anchor = readonly [midi: number, value: number];

/**
 * Inharmonicity of an average piano: two straight lines in log B, the bass bridge's falling and the treble bridge's rising.
 * Source: F. Rigaud, B. David, L. Daudet, DAFx-2011; constants as given there for the average piano.
 */
export function typicalB(midi: number): number {
  return Math.exp(9.26e-2 * midi - 13.64) + Math.exp(-8.47e-2 * midi - 5.82);
}

/** Time for 60 dB of the first partial's prompt sound. */
export function typicalDecayTimeS(midi: number): number {
  return alongCompass(midi, DECAY_TIME_S);
}

/** How many partials stand above the noise of a close recording. */
export function typicalPartialCount(midi: number): number {
  return Math.max(1, Math.round(alongCompass(midi, PARTIAL_COUNT)));
}

/** Where the hammer strikes, as a share of the speaking length. */
export function typicalStrikePosition(midi: number): number {
  return alongCompass(midi, STRIKE_POSITION);
}

/** How long the hammer's blow takes to build the tone up. */
export function typicalAttackS(midi: number): number {
  return alongCompass(midi, ATTACK_S);
}

/** Time for 60 dB once the damper lies on the string. */
export function typicalDampedDecayTimeS(midi: number): number {
  return alongCompass(midi, DAMPED_DECAY_TIME_S);
}

/** Dampers end about here (common practice: between D6 and G6). */
export const HIGHEST_DAMPED_MIDI = 89;

/**
 * Amplitude of a partial, 1 = the strength it would have without any of the losses below: falls with the partial number, has
 * holes where the hammer strikes a node (never quite empty), and is weak below about 100 Hz, where a soundboard hardly radiates.
 */
export function typicalAmplitude(
  midi: number,
  partialNumber: number,
  frequencyHz: number,
  strikePosition: number,
): number {
  const fallDb = alongCompass(midi, FALL_DB_PER_PARTIAL) * (partialNumber - 1);
  const strike = Math.hypot(Math.sin(Math.PI * partialNumber * strikePosition), 0.05);
  const radiation = frequencyHz ** 2 / (frequencyHz ** 2 + RADIATION_CORNER_HZ ** 2);
  return 10 ** (-fallDb / 20) * strike * radiation;
}

/** Time for 60 dB of a higher partial: the losses grow with the partial number. */
export function partialDecayTimeS(firstPartialDecayTimeS: number, partialNumber: number): number {
  return firstPartialDecayTimeS / (1 + DECAY_RATE_GROWTH_PER_PARTIAL * (partialNumber - 1));
}

const RADIATION_CORNER_HZ = 110;
const DECAY_RATE_GROWTH_PER_PARTIAL = 0.15;
const DECAY_TIME_S: readonly Anchor[] = [
  [21, 25],
  [36, 18],
  [48, 12],
  [60, 8],
  [72, 4.2],
  [84, 2],
  [96, 0.9],
  [108, 0.45],
];
const PARTIAL_COUNT: readonly Anchor[] = [
  [21, 50],
  [40, 32],
  [60, 18],
  [72, 11],
  [84, 7],
  [96, 4],
  [108, 3],
];
const STRIKE_POSITION: readonly Anchor[] = [
  [21, 0.118],
  [60, 0.115],
  [84, 0.09],
  [108, 0.055],
];
const ATTACK_S: readonly Anchor[] = [
  [21, 0.005],
  [60, 0.0025],
  [84, 0.0012],
  [108, 0.0005],
];
const DAMPED_DECAY_TIME_S: readonly Anchor[] = [
  [21, 0.7],
  [60, 0.25],
  [96, 0.12],
  [108, 0.1],
];
const FALL_DB_PER_PARTIAL: readonly Anchor[] = [
  [21, 0.8],
  [40, 1.3],
  [60, 2.5],
  [72, 4],
  [84, 7],
  [96, 10],
  [108, 13],
];

/** Straight lines between the anchors in the logarithm of the value; the end values hold beyond the ends. */
function alongCompass(midi: number, anchors: readonly Anchor[]): number {
  const upper = anchors.findIndex(([anchorMidi]) => anchorMidi >= midi);
  const [highMidi, high] = anchors[upper === -1 ? anchors.length - 1 : upper]!;
  if (upper <= 0) return high;
  const [lowMidi, low] = anchors[upper - 1]!;
  return low * (high / low) ** ((midi - lowMidi) / (highMidi - lowMidi));
}
