/**
 * Inharmonicity that a piano string usually has, by note: the sum of a bass and a treble asymptote, straight in log B.
 *
 * B(m) = e^(b_T·m + a_T) + e^(b_B·m + a_B), m the MIDI number. Source: F. Rigaud, B. David, L. Daudet, J. Acoust. Soc. Am. 133
 * (2013) 3107–3118 and DAFx-11; the four constants are the averages of the 2011 paper (secondary: as used in published
 * research code). Real instruments lie within a factor of about 0.4 to 2.5 of it; large pianos are lower in the bass.
 */
export const TREBLE_ASYMPTOTE = { slope: 9.26e-2, intercept: -13.64 };
export const BASS_ASYMPTOTE = { slope: -8.47e-2, intercept: -5.82 };

/** @example typicalInharmonicity(69) // 7.18e-4 */
export function typicalInharmonicity(midi: number): number {
  return asymptote(TREBLE_ASYMPTOTE, midi) + asymptote(BASS_ASYMPTOTE, midi);
}

function asymptote({ slope, intercept }: { readonly slope: number; readonly intercept: number }, midi: number): number {
  return Math.exp(slope * midi + intercept);
}

/** Frequency of partial n of a stiff string (H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203–209). */
export function partialHz(f0Hz: number, inharmonicityB: number, partialNumber: number): number {
  return partialNumber * f0Hz * Math.sqrt(1 + inharmonicityB * partialNumber ** 2);
}
