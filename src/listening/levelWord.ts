import type { LevelZone } from '../ui/LevelBar.tsx';
import { texts } from '../ui/texts.ts';

const words = texts.recording.level;

/** The word beside the level: a low level after a strike is the note dying away, and neither silence nor a quiet blow. */
export function levelWord(zone: LevelZone, isStruck: boolean): string {
  return isStruck && (zone === 'silent' || zone === 'quiet') ? words.fading : words[zone];
}
