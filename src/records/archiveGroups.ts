/** Rows of an archive gathered by the instrument that they belong to, packed as the database has them. */
import type { ArchiveBatch, ArchivedGone, ArchivedRival } from '../files/archive/archiveContents.ts';
import { NO_RECORDS, type RecordTables } from '../files/merge/recordTables.ts';
import type { RowVersion } from '../files/merge/rowVersion.ts';
import { MERGED_KINDS } from '../files/merge/tablesOfArchive.ts';
import type { Take } from '../piano/instrument.ts';
import { checkRow, type TableName } from './rowSchemas.ts';
import { takeToRow } from './rows.ts';

type Group = { rows: Record<string, RowVersion[]>; rivals: ArchivedRival[]; gone: ArchivedGone[] };

export type ArchiveGroups = ReturnType<typeof createGroups>;

export function createGroups() {
  const groups = new Map<string, Group>();
  const names = new Map<string, string>();
  let unplacedCount = 0;
  const groupOf = (key: string): Group => {
    const found = groups.get(key) ?? { rows: {}, rivals: [], gone: [] };
    groups.set(key, found);
    return found;
  };
  const addRow = (table: string, row: RowVersion) => {
    const { rows } = groupOf(keyOf(table, row));
    rows[table] ??= [];
    rows[table].push(row);
  };
  const addUnattached = (table: string, row: unknown) => {
    const isRow = typeof row === 'object' && row !== null && 'id' in row && MERGED_KINDS.some((kind) => kind === table);
    const asRow = isRow && table === 'takes' && 'isKept' in row ? takeToRow(row as unknown as Take) : row;
    if (isRow && checkRow(table as TableName, asRow).isSound) addRow(table, asRow as RowVersion);
    else unplacedCount += 1;
  };
  return {
    add(batch: ArchiveBatch) {
      if (batch.kind === 'rivals')
        for (const rival of batch.rows) groupOf(rival.instrumentId ?? '').rivals.push(asStored(rival));
      else if (batch.kind === 'gone') for (const mark of batch.rows) groupOf(mark.instrumentId ?? '').gone.push(mark);
      else if (batch.kind === 'unattached') for (const { table, row } of batch.rows) addUnattached(table, row);
      else if (batch.kind !== 'takes' && batch.kind !== 'photographFiles' && batch.kind !== 'sounds')
        for (const row of batch.rows) addRow(batch.kind, row);
      if (batch.kind === 'instruments') for (const { id, name } of batch.rows) names.set(id, name);
    },
    addTake: (take: Take) => addRow('takes', takeToRow(take)),
    takeCount: (key: string) => groups.get(key)?.rows.takes?.length ?? 0,
    /** Hands a group out and forgets it. */
    take(key: string): RecordTables {
      const group = groups.get(key) ?? { ...NO_RECORDS };
      groups.delete(key);
      return group;
    },
    keys: () => [...groups.keys()],
    nameOf: (key: string) => names.get(key) ?? '',
    unplacedCount: () => unplacedCount,
  };
}

/** Takes are stored packed; an archive's rival may come unpacked. */
function asStored(rival: ArchivedRival): ArchivedRival {
  const isTake =
    rival.table === 'takes' && typeof rival.row === 'object' && rival.row !== null && 'isKept' in rival.row;
  return isTake ? { ...rival, row: takeToRow(rival.row as unknown as Take) } : rival;
}

function keyOf(table: string, row: RowVersion): string {
  if (table === 'instruments') return row.id;
  const { instrumentId } = row as { instrumentId?: unknown };
  return typeof instrumentId === 'string' ? instrumentId : '';
}
