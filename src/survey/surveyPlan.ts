/** The strings that a survey is to hear, in the order of the walk. */
import { type Compass, notesOf } from '../piano/compass.ts';
import type { StringPosition } from '../piano/reading.ts';

/** One note's string, or its whole unison where the position is 0. */
export type PlanItem = { readonly midi: number; readonly stringPosition: StringPosition };

/** The same string of every note: 0 for open unisons, 2 behind a felt strip (the centre strings). */
export function planOfCompass(compass: Compass, stringPosition: StringPosition): PlanItem[] {
  return notesOf(compass).map((midi) => ({ midi, stringPosition }));
}

/**
 * Each string alone, from left to right, note by note.
 * @param stringCountOf how many strings the note has, 1 to 3
 */
export function planOfStrings(compass: Compass, stringCountOf: (midi: number) => number): PlanItem[] {
  const positions = [1, 2, 3] as const;
  return notesOf(compass).flatMap((midi) =>
    positions.slice(0, stringCountOf(midi)).map((stringPosition) => ({ midi, stringPosition })),
  );
}

export function isSameItem(a: PlanItem, b: PlanItem): boolean {
  return a.midi === b.midi && a.stringPosition === b.stringPosition;
}
