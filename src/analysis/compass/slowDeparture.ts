/**
 * What an instrument departs from a rule by, slowly along the compass: a sum of bell-shaped bumps, each with a small normal prior.
 * Where there are no notes the bumps fade and the rule alone is left. Source: common practice (ridge regression on a smooth basis).
 */

export type SlowDeparture = {
  /** How far the bumps stand apart and how wide they are (one sigma), in notes. */
  readonly spacingNotes: number;
  readonly lowestMidi: number;
  readonly highestMidi: number;
};

export function bumpCentres({ spacingNotes, lowestMidi, highestMidi }: SlowDeparture): number[] {
  const count = Math.ceil((highestMidi - lowestMidi) / spacingNotes) + 1;
  return Array.from({ length: count }, (_, index) => lowestMidi + index * spacingNotes);
}

/** Height of each bump at a note, 0…1. */
export function bumpHeights(centres: readonly number[], spacingNotes: number, midi: number): number[] {
  return centres.map((centre) => Math.exp(-0.5 * ((midi - centre) / spacingNotes) ** 2));
}
