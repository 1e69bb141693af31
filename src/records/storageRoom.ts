/** Whether there is room for the next survey, told before it is needed. */
import type { StorageStatus } from './storageStatus.ts';

/**
 * Left free for figures, whatever else fills the disk: a whole survey's are below 2 MB, so this is years of them. Sounds are no
 * longer kept below it. Chosen.
 */
const ROOM_FOR_FIGURES_BYTES = 64e6;
/** What a survey with its sounds may take: 88 notes, two takes of some, every second of a long decay. Chosen. */
const ROOM_FOR_SURVEY_BYTES = 250e6;

export type StorageRoom =
  /** Room for a survey with sound, or the browser does not say. */
  | 'enough'
  /** The next survey's sounds may find no room. */
  | 'little'
  /** Sounds are no longer kept; figures still are. */
  | 'figures-only';

export function storageRoom({ usedBytes, quotaBytes }: StorageStatus): StorageRoom {
  if (usedBytes === null || quotaBytes === null) return 'enough';
  const free = quotaBytes - usedBytes;
  if (free <= ROOM_FOR_FIGURES_BYTES) return 'figures-only';
  return free <= ROOM_FOR_FIGURES_BYTES + ROOM_FOR_SURVEY_BYTES ? 'little' : 'enough';
}
