/** Between an archive and tables in memory. Sounds and pictures are left where they are: they are large, and nobody edits them. */
import type {
  ArchiveContents,
  ArchivedGone,
  ArchivedRival,
  ArchiveRowKind,
  UnattachedRow,
} from '../archive/archiveContents.ts';
import type { Archive, ReadOptions } from '../archive/readArchive.ts';
import type { RecordTables } from './recordTables.ts';
import type { RowVersion } from './rowVersion.ts';

/** Kinds of rows that are edited. */
export const MERGED_KINDS = [
  'instruments',
  'events',
  'visits',
  'surveys',
  'calibrations',
  'takes',
  'torques',
  'decisions',
  'trials',
  'schedules',
  'wireGrades',
  'photographs',
] as const satisfies readonly ArchiveRowKind[];

/** Rows that came without what they refer to stand in their tables: it may be there on the other side. @throws {ArchiveFault} */
export async function tablesOfArchive(
  archive: Archive,
  options: Omit<ReadOptions, 'kinds'> = {},
): Promise<RecordTables> {
  const rows: Record<string, RowVersion[]> = {};
  const rivals: ArchivedRival[] = [];
  const gone: ArchivedGone[] = [];
  const add = (table: string, list: readonly RowVersion[]) => {
    rows[table] ??= [];
    rows[table].push(...list);
  };
  for await (const batch of archive.batches({ ...options, kinds: [...MERGED_KINDS, 'rivals', 'gone', 'unattached'] })) {
    if (batch.kind === 'rivals') rivals.push(...batch.rows);
    else if (batch.kind === 'gone') gone.push(...batch.rows);
    else if (batch.kind === 'unattached') for (const { table, row } of batch.rows) add(table, [row as RowVersion]);
    else if (isMerged(batch.kind)) add(batch.kind, batch.rows);
  }
  return { rows, rivals, gone };
}

function isMerged(kind: ArchiveRowKind): boolean {
  return MERGED_KINDS.some((known) => known === kind);
}

/** To be written into an archive; sounds and pictures are the caller's. */
export function contentsOfTables({ rows, rivals, gone }: RecordTables): ArchiveContents {
  const merged = Object.fromEntries(MERGED_KINDS.map((kind) => [kind, rows[kind] ?? []])) as unknown as ArchiveContents;
  const others = Object.entries(rows).filter(([table]) => !MERGED_KINDS.some((known) => known === table));
  const unattached: UnattachedRow[] = others.flatMap(([table, list]) =>
    list.map((row) => ({ table, rowId: row.id, row })),
  );
  const takes = rows.takes ?? [];
  return { ...merged, takes: () => takes as never, rivals, gone, unattached };
}
