/** Notes that somebody names in a line of text. */
import { type Compass, isInCompass } from '../../piano/compass.ts';
import { nameToMidi } from '../../piano/note.ts';

export type NamedNotes =
  | { readonly ok: true; readonly midis: readonly number[] }
  | { readonly ok: false; readonly fault: 'not-a-note' | 'outside' | 'reversed'; readonly part: string };

/** In rising order, each once. @example namedNotes('C5 to D5, E2', COMPASS_88) // { ok: true, midis: [40, 72, 73, 74] } */
export function namedNotes(text: string, compass: Compass): NamedNotes {
  const midis = new Set<number>();
  for (const part of text.split(/[,;]+/).map((piece) => piece.trim())) {
    if (part === '') continue;
    const [first = '', last = first, ...rest] = part.split(/\s+to\s+|\s*[-–—]\s*/);
    const [from, to] = [nameToMidi(first), nameToMidi(last)];
    if (from === undefined || to === undefined || rest.length > 0) return { ok: false, fault: 'not-a-note', part };
    if (!isInCompass(compass, from) || !isInCompass(compass, to)) return { ok: false, fault: 'outside', part };
    if (from > to) return { ok: false, fault: 'reversed', part };
    for (let midi = from; midi <= to; midi += 1) midis.add(midi);
  }
  return { ok: true, midis: [...midis].sort((a, b) => a - b) };
}
