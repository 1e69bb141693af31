/** The notes a piano has, from lowest to highest, both included. */
import { midiToName, nameToMidi } from './note.ts';

export type Compass = { readonly lowestMidi: number; readonly highestMidi: number };

/** 88 notes A0–C8, usual since the mid-1880s; 85 notes A0–A7, usual before (common practice). */
export const COMPASS_88: Compass = { lowestMidi: 21, highestMidi: 108 };
export const COMPASS_85: Compass = { lowestMidi: 21, highestMidi: 105 };

/** Reads `A0-C8` (hyphen or dash). Undefined where a name is not a note or the order is reversed. */
export function parseCompass(text: string): Compass | undefined {
  const [low, high, ...rest] = text.split(/[-–—]/);
  const lowestMidi = nameToMidi(low ?? '');
  const highestMidi = nameToMidi(high ?? '');
  if (rest.length > 0 || lowestMidi === undefined || highestMidi === undefined || lowestMidi > highestMidi)
    return undefined;
  return { lowestMidi, highestMidi };
}

/** @example compassToText(COMPASS_88) // 'A0-C8' */
export function compassToText(compass: Compass): string {
  return `${midiToName(compass.lowestMidi)}-${midiToName(compass.highestMidi)}`;
}

export function noteCount(compass: Compass): number {
  return compass.highestMidi - compass.lowestMidi + 1;
}

export function notesOf(compass: Compass): number[] {
  return Array.from({ length: noteCount(compass) }, (_, index) => compass.lowestMidi + index);
}

export function isInCompass(compass: Compass, midi: number): boolean {
  return midi >= compass.lowestMidi && midi <= compass.highestMidi;
}
