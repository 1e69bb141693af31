/** Deleting, the bin, and taking away for good: the part of the records that screens see. */
import { type BinEntry, listBin } from './bin.ts';
import type { RecordsDatabase } from './database.ts';
import { type DeleteOutcome, deleteRows, type RestoreOutcome, restore } from './deletions.ts';
import type { Deletable } from './deletionTree.ts';
import { type PurgeOutcome, purge, purgeOld } from './purge.ts';

export type BinRecords = {
  /** Hides rows and all that hangs on them; see deletions.ts. What comes back undoes it. */
  deleteRows(targets: readonly Deletable[]): Promise<DeleteOutcome>;
  restore(deletionIds: readonly string[]): Promise<RestoreOutcome>;
  /** The latest first. */
  listBin(): Promise<BinEntry[]>;
  /** Takes deletions away for good. */
  purge(deletionIds: readonly string[]): Promise<PurgeOutcome>;
  /** Takes away for good what has lain in the bin long enough. */
  purgeOld(now: Date): Promise<PurgeOutcome>;
};

export function binFunctions(database: RecordsDatabase): BinRecords {
  return {
    deleteRows: (targets) => deleteRows(database, targets, new Date().toISOString()),
    restore: (deletionIds) => restore(database, deletionIds),
    listBin: () => listBin(database),
    purge: (deletionIds) => purge(database, deletionIds),
    purgeOld: (now) => purgeOld(database, now),
  };
}
