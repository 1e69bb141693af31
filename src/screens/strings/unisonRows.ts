/** The notes of which two or three strings were recorded alone. */
import type { NoteReading } from '../../piano/reading.ts';
import { type UnisonMatch, unisonMatch } from '../../stringing/falseBeats/unisonMatch.ts';

/** From the lowest note up. */
export function unisonRows(readings: readonly NoteReading[]): UnisonMatch[] {
  const byNote = new Map<number, NoteReading[]>();
  for (const reading of readings) byNote.set(reading.midi, [...(byNote.get(reading.midi) ?? []), reading]);
  return [...byNote]
    .sort(([a], [b]) => a - b)
    .flatMap(([, own]) => {
      const match = unisonMatch(own);
      return match.known ? [match] : [];
    });
}

export function isApart({ pairs }: UnisonMatch): boolean {
  return pairs.some((pair) => pair.isApart);
}

/** The fastest beat between two of its strings as they are, on partial 1; null where none is beyond doubt. */
export function beatNowHz({ pairs }: UnisonMatch): number | null {
  const apart = pairs.filter((pair) => pair.isApart).map(({ beatHz }) => beatHz);
  return apart.length === 0 ? null : Math.max(...apart);
}
