/**
 * Strings of a concert grand, with the tension that goes with each frequency, as published for a simulation (J. Chabassier, A. Chaigne,
 * P. Joly, J. Acoust. Soc. Am. 134 (2013) 648–665; read in public research code that lists them, so: secondary). Plain wire of
 * 7850 kg/m³. Two sets: the instrument's own, and one in which every string is plain.
 */
export type PublishedString = {
  readonly note: string;
  readonly frequencyHz: number;
  readonly speakingLengthMm: number;
  readonly diameterMm: number;
  readonly tensionN: number;
};

const row = (note: string, frequencyHz: number, speakingLengthMm: number, diameterMm: number, tensionN: number) => ({
  note,
  frequencyHz,
  speakingLengthMm,
  diameterMm,
  tensionN,
});

export const PUBLISHED_STRINGS: readonly PublishedString[] = [
  row('F3', 175.01, 960, 1.049, 766),
  row('A3', 220.49, 773, 1.027, 755),
  row('C#5', 555.6, 326, 0.928, 695),
  row('G#5', 832.54, 223, 0.904, 696),
  row('G6', 1571.35, 124, 0.86, 689),
  row('C7', 2098.32, 95, 0.831, 670),
  row('F#7', 2965.15, 69, 0.787, 631),
  row('D#1', 38.98, 3945, 1.237, 892),
  row('C2', 65.55, 2417, 1.056, 690),
  row('F3', 175.01, 960, 1.146, 914),
  row('G#2', 104.06, 1564, 1.16, 879),
  row('A3', 220.49, 773, 1.102, 870),
  row('C#5', 555.6, 326, 0.921, 684),
  row('G#5', 832.54, 223, 0.868, 637),
  row('G6', 1571.35, 124, 0.794, 587),
  row('C7', 2098.32, 95, 0.757, 555),
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a diameter
  row('F#7', 2965.15, 69, 0.707, 510),
];
