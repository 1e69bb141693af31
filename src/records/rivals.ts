/** Rows that two devices changed apart: both versions stay until somebody chooses one of them, or edits the row further. */
import { differencesOf, type FieldDifference } from '../files/merge/differences.ts';
import { chosenRow } from '../files/merge/editRow.ts';
import { rowKey } from '../files/merge/rowKeys.ts';
import { haveSameContent, type RowVersion } from '../files/merge/rowVersion.ts';
import type { InstrumentId } from '../piano/ids.ts';
import type { RecordsDatabase } from './database.ts';
import { checkRow, type TableName } from './rowSchemas.ts';
import { type RivalRow, rowToTake, type TakeRow } from './rows.ts';
import { isDeleted } from './soundRows.ts';
import { NotARecordError, outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export type RivalPair = {
  readonly rivalId: string;
  readonly table: TableName;
  readonly rowId: string;
  readonly instrumentName: string | null;
  readonly foundAt: string;
  /** As it is shown now. */
  readonly shown: RowVersion;
  readonly other: RowVersion;
  readonly differences: readonly FieldDifference[];
};

export type RivalRecords = {
  /** The latest first; versions that differ in nothing that somebody entered or measured are left out. */
  listRivals(): Promise<RivalPair[]>;
  /** How many rows have a rival: an estimate from the index, for a notice. */
  rivalCount(): Promise<number>;
  /** Makes one version the row, newer than all others; the others go. @param rivalId null: the version that is shown */
  chooseVersion(table: TableName, rowId: string, rivalId: string | null): Promise<WriteOutcome>;
};

export function rivalFunctions(database: RecordsDatabase): RivalRecords {
  return {
    listRivals: () => listRivals(database),
    rivalCount: () => database.rivals.count(),
    chooseVersion: (table, rowId, rivalId) => chooseVersion(database, { table, rowId, rivalId }),
  };
}

async function listRivals(database: RecordsDatabase): Promise<RivalPair[]> {
  const rivals = await database.rivals.toArray();
  const pairs = await Promise.all(rivals.map((rival) => pairOf(database, rival)));
  return pairs.flatMap((pair) => pair ?? []).sort((a, b) => (a.foundAt < b.foundAt ? 1 : -1));
}

async function pairOf(database: RecordsDatabase, rival: RivalRow): Promise<RivalPair | undefined> {
  const table = rival.table as TableName;
  const shown = await database.table<RowVersion, string>(table).get(rival.rowId);
  const other = rival.row as RowVersion;
  if (!shown || haveSameContent(shown, other)) return undefined;
  const instrument =
    rival.instrumentId === null ? undefined : await database.instruments.get(rival.instrumentId as InstrumentId);
  if (table !== 'instruments' && instrument && isDeleted(instrument)) return undefined; // it lies in the bin with all that is its
  const differences = differencesOf(unpacked(table, shown), unpacked(table, other));
  return {
    rivalId: rival.id,
    table,
    rowId: rival.rowId,
    instrumentName: instrument?.name ?? null,
    foundAt: rival.foundAt,
    shown,
    other,
    differences,
  };
}

function unpacked(table: TableName, row: RowVersion): RowVersion {
  if (table !== 'takes' || !checkRow('takes', row).isSound) return row;
  return rowToTake(row as unknown as TakeRow);
}

type Choice = { readonly table: TableName; readonly rowId: string; readonly rivalId: string | null };

function chooseVersion(database: RecordsDatabase, { table, rowId, rivalId }: Choice): Promise<WriteOutcome> {
  return outcomeOf(() =>
    database.transaction('rw', [table, 'rivals', 'gone'], async () => {
      const key = rowKey(table, rowId);
      const shown = await database.table<RowVersion, string>(table).get(rowId);
      const rivals = await database.rivals.where('id').startsWith(`${key}/`).toArray();
      const gone = await database.gone.where('id').between(key, `${key}/\uffff`, true, true).toArray();
      const choice =
        rivalId === null ? shown : (rivals.find(({ id }) => id === rivalId)?.row as RowVersion | undefined);
      if (!shown || !choice) throw new NotARecordError('this version is no longer there; somebody chose already');
      const versions = [shown, ...rivals.map(({ row }) => row as RowVersion)];
      const [chosen] = chosenRow(
        { versions, gone: gone.map(({ stamp }) => stamp) },
        choice,
        database.deviceId,
      ).versions;
      await database.table(table).put(chosen);
      await database.rivals.bulkDelete(rivals.map(({ id }) => id));
      return { written: true as const };
    }),
  );
}
