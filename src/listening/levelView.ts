/** A level as the bar and its word show it. */
import type { LevelZone } from '../ui/LevelBar.tsx';

export type LevelView = { readonly share: number; readonly zone: LevelZone };

/** The bar's left end. A room at night stands near −60 dBFS on common microphones; chosen, the bar only shows. */
const BAR_FLOOR_DBFS = -60;
/**
 * Between strikes the level falls into this zone, which is as it should be.
 * Chosen: below it nothing but the room is heard.
 */
const SILENT_BELOW_DBFS = -50;
/** A blow that peaks lower leaves less than about 30 dB above a quiet room. Chosen; higher asks for closer microphones. */
const QUIET_BELOW_DBFS = -30;

export const SILENT_LEVEL: LevelView = { share: 0, zone: 'silent' };

export function levelView(peakDbfs: number, isClipped: boolean): LevelView {
  const share = Math.min(Math.max(1 - peakDbfs / BAR_FLOOR_DBFS, 0), 1);
  if (isClipped) return { share: 1, zone: 'clipping' };
  if (peakDbfs < SILENT_BELOW_DBFS) return { share, zone: 'silent' };
  return { share, zone: peakDbfs < QUIET_BELOW_DBFS ? 'quiet' : 'good' };
}
