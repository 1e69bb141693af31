/** A finding about the room as a sentence, and what to do about it. */
import { formatNote, formatNumber } from '../../piano/format.ts';
import type { RoomFinding } from '../../survey/roomAdvice.ts';
import { texts } from '../../ui/texts.ts';

export type RoomSentence = { readonly sentence: string; readonly remedy?: string };

const words = texts.room;
const db = (levelDbfs: number) => formatNumber(levelDbfs, 0);

export function roomSentence(finding: RoomFinding): RoomSentence {
  switch (finding.kind) {
    case 'no-signal':
      return words.noSignal;
    case 'quiet':
    case 'audible':
    case 'loud':
      return { sentence: words.noise[finding.kind](db(finding.noiseDbfs)), ...words.noiseRemedy[finding.kind] };
    case 'treble-may-drown':
      return words.treble(formatNote(finding.fromMidi));
    case 'hum':
      return words.hum(formatNumber(finding.strongestHz, 0), db(finding.levelDbfs));
    case 'blow-clipped':
      return words.blowClipped;
    case 'blow-quiet':
      return words.blowQuiet(db(finding.peakDbfs));
    case 'blow-good':
      return words.blowGood(db(finding.peakDbfs));
  }
}
