/**
 * Brings an archive into the database, an instrument at a time: each in one transaction, with all its figures; sounds and pictures
 * follow. What stops it in between leaves whole instruments, and doing it again goes on where it stopped, since merging what is
 * there already changes nothing.
 */
import type { ArchiveBatch } from '../files/archive/archiveContents.ts';
import type { StopSignal } from '../files/archive/archiveFault.ts';
import type { Archive } from '../files/archive/readArchive.ts';
import { MERGED_KINDS } from '../files/merge/tablesOfArchive.ts';
import { type ArchiveGroups, createGroups } from './archiveGroups.ts';
import type { RecordsDatabase } from './database.ts';
import { addFiles } from './mergeFiles.ts';
import { type GroupOptions, type MergeCounts, mergeGroup, NO_COUNTS } from './mergeGroup.ts';

export type MergeOptions = {
  /** Says what would happen, and writes nothing. */
  readonly isDryRun?: boolean;
  /** Leaves out rows that are wrong instead of stopping at the first. */
  readonly skipsFaults?: boolean;
  readonly signal?: StopSignal;
  /** The share that is done, from 0 to 1. */
  readonly onProgress?: (share: number) => void;
};

export type InstrumentMerge = MergeCounts & {
  /** Null for what belongs to no instrument. */
  readonly instrumentId: string | null;
  readonly name: string;
};

export type MergeReport = {
  /** In the order of the archive; those that would not change are among them. */
  readonly instruments: readonly InstrumentMerge[];
  readonly soundCount: number;
  readonly photographCount: number;
  /** Rows that are no records: they stay in the archive's file alone. */
  readonly unplacedCount: number;
};

/** So many takes of one instrument are gathered before they are written: more than a lifetime of visits. */
const MOST_GATHERED = 20_000;
const SMALL_KINDS = [...MERGED_KINDS.filter((kind) => kind !== 'takes'), 'rivals', 'gone', 'unattached'] as const;

/** @throws {ArchiveFault} where the archive cannot be read, or it was told to stop; and whatever the database throws */
export async function mergeArchive(
  database: RecordsDatabase,
  archive: Archive,
  options: MergeOptions = {},
): Promise<MergeReport> {
  const { isDryRun = false, onProgress } = options;
  const reading = readingOf(options);
  const groups = createGroups();
  for await (const batch of archive.batches({ ...reading, kinds: SMALL_KINDS })) groups.add(batch);
  const group: GroupOptions = { now: new Date().toISOString(), leftOut: archive.leftOut, isDryRun };
  const merged = new Map<string, InstrumentMerge>();
  const settle = async (key: string) => {
    const counts = await mergeGroup(database, groups.take(key), group);
    merged.set(
      key,
      added(merged.get(key), counts, { instrumentId: key === '' ? null : key, name: groups.nameOf(key) }),
    );
  };
  const figures = { ...reading, onProgress: (share: number) => onProgress?.(share * 0.8) };
  const keys = takesByInstrument(archive.batches({ ...figures, kinds: ['takes'] }), groups);
  await oneAfterAnother(keys, settle);
  for (const key of groups.keys()) await settle(key);
  const files = await addFiles(database, archive, {
    ...reading,
    isDryRun,
    onProgress: (share) => onProgress?.(0.8 + share * 0.2),
  });
  return { instruments: [...merged.values()], unplacedCount: groups.unplacedCount(), ...files };
}

/** While one is worked on the next is being fetched, and no more than that. @throws the first fault of either, after all has come to rest */
async function oneAfterAnother(keys: AsyncIterable<string>, settle: (key: string) => Promise<void>): Promise<void> {
  let settling: Promise<void> = Promise.resolve();
  try {
    for await (const key of keys) {
      await settling;
      settling = settle(key);
      settling.catch(() => undefined); // told below, or where the next one waits for it
    }
  } catch (fault) {
    await settling.catch(() => undefined);
    throw fault;
  }
  await settling;
}

function readingOf({ signal, skipsFaults }: MergeOptions) {
  return { ...(signal && { signal }), ...(skipsFaults && { complain: () => undefined }) };
}

/** Gives an instrument's key whenever takes of another one begin, so that no more than one instrument's takes are in memory. */
async function* takesByInstrument(batches: AsyncIterable<ArchiveBatch>, groups: ArchiveGroups): AsyncGenerator<string> {
  let current: string | null = null;
  for await (const batch of batches) {
    if (batch.kind !== 'takes') continue;
    for (const take of batch.rows) {
      const isOther = current !== null && take.instrumentId !== current;
      if (current !== null && (isOther || groups.takeCount(current) >= MOST_GATHERED)) yield current;
      current = take.instrumentId;
      groups.addTake(take);
    }
  }
}

function added(
  before: MergeCounts | undefined,
  counts: MergeCounts,
  of: Pick<InstrumentMerge, 'instrumentId' | 'name'>,
): InstrumentMerge {
  const earlier = before ?? NO_COUNTS;
  return {
    ...of,
    newRows: earlier.newRows + counts.newRows,
    changedRows: earlier.changedRows + counts.changedRows,
    deletedRows: earlier.deletedRows + counts.deletedRows,
    rivals: earlier.rivals + counts.rivals,
  };
}
