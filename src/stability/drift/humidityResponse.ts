/** How strings answer humidity along the compass, in cents per %RH. */
import type { PianoString } from './changeRows.ts';
import { median, robustDeviation } from './statistics.ts';

/**
 * What is usual before anything is known of an instrument: 0.8 cents per %RH at A4, more below it down to the bass break, little in the
 * bass and the top octave. Source: practitioners' records (D. Rose and others, a trade mailing list, 2000–2009), uncontrolled.
 */
export function usualResponse(midi: number, bassBridgeTopMidi: number): number {
  if (midi <= bassBridgeTopMidi) return 0.35;
  return Math.min(2.2, 0.8 * 2 ** ((69 - midi) / 16));
}

export type SmoothResponse = { readonly means: Float64Array; readonly deviations: Float64Array };

/** Reach of the smoothing along a bridge, in semitones (one standard deviation). */
const REACH = 5;
/** Strings differ from their neighbours' course by at least this share and amount, cents per %RH. */
const LEAST_SHARE = 0.05;
const LEAST_DEVIATION = 0.03;
/** Strings that hardly answer still differ as if they answered by this, cents per %RH. */
const SMALL_RESPONSE = 0.1;

/**
 * The course of the responses along each bridge, for left, centre and right strings by themselves, and how far a single string may
 * stray from it. Locally linear, with robust weights.
 */
export function smoothResponse(
  strings: readonly PianoString[],
  responses: Float64Array,
  uncertainties: Float64Array,
  bassBridgeTopMidi: number,
): SmoothResponse {
  const groupOf = ({ midi, stringPosition }: PianoString) => (midi <= bassBridgeTopMidi ? 0 : 1) * 4 + stringPosition;
  const means = new Float64Array(strings.length);
  strings.forEach((string, i) => {
    means[i] = localLine(
      string.midi,
      strings,
      responses,
      uncertainties,
      (j) => groupOf(strings[j]!) === groupOf(string),
    );
  });
  const strays = strings.map((_, i) => responses[i]! - means[i]!);
  const sizes = Array.from(means, (mean) => Math.abs(mean) + SMALL_RESPONSE);
  const share = Math.max(
    LEAST_SHARE,
    robustDeviation(
      strays.map((stray, i) => stray / sizes[i]!),
      0,
    ),
  );
  return { means, deviations: Float64Array.from(sizes, (size) => Math.max(LEAST_DEVIATION, share * size)) };
}

function localLine(
  midi: number,
  strings: readonly PianoString[],
  responses: Float64Array,
  uncertainties: Float64Array,
  belongs: (index: number) => boolean,
): number {
  const near = strings.map((_, j) => j).filter((j) => belongs(j) && Math.abs(strings[j]!.midi - midi) <= 3 * REACH);
  const middle = median(near.map((j) => responses[j]!));
  const scale = Math.max(
    0.1,
    robustDeviation(
      near.map((j) => responses[j]!),
      middle,
    ),
  );
  let s0 = 1e-9;
  let s1 = 0;
  let s2 = 1e-3;
  let t0 = 0;
  let t1 = 0;
  for (const j of near) {
    const distance = (strings[j]!.midi - midi) / REACH;
    const robust = 1 / (1 + ((responses[j]! - middle) / (4 * scale)) ** 2);
    const weight = (Math.exp(-0.5 * distance ** 2) * robust) / (0.1 ** 2 + uncertainties[j]! ** 2);
    s0 += weight;
    s1 += weight * distance;
    s2 += weight * distance ** 2;
    t0 += weight * responses[j]!;
    t1 += weight * distance * responses[j]!;
  }
  return (s2 * t0 - s1 * t1) / (s0 * s2 - s1 * s1);
}
