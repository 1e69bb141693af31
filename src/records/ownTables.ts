/** What the database knows of the rows that an archive brings, for the two to meet. */
import type { RecordTables } from '../files/merge/recordTables.ts';
import type { RowVersion } from '../files/merge/rowVersion.ts';
import type { InstrumentId, SurveyId } from '../piano/ids.ts';
import type { RecordsDatabase } from './database.ts';
import { DELETABLE_TABLES } from './deletionTree.ts';
import { bothFlags } from './recordSet.ts';
import type { GoneRow, RivalRow } from './rows.ts';
import { rowsOfSurvey } from './takeReads.ts';

export const MERGED_TABLES = [...DELETABLE_TABLES, 'calibrations'] as const;

/**
 * What the database knows of the rows that the other side has, and of takes that share a survey with them.
 * @param looksEverywhere also for takes that their instrument does not have: under another one they may be there
 */
export async function ownTables(
  database: RecordsDatabase,
  theirs: RecordTables,
  looksEverywhere: boolean,
): Promise<RecordTables> {
  const wanted = new Map<string, Set<string>>();
  const want = (table: string, id: string) => wanted.set(table, (wanted.get(table) ?? new Set()).add(id));
  for (const [table, list] of Object.entries(theirs.rows)) for (const { id } of list) want(table, id);
  for (const { table, rowId } of [...theirs.rivals, ...theirs.gone]) want(table, rowId);
  const rows: Record<string, readonly RowVersion[]> = {};
  for (const [table, ids] of wanted)
    if (table === 'takes')
      rows.takes = await ownTakes(database, { theirs: theirs.rows.takes ?? [], ids, looksEverywhere });
    else if (isMerged(table)) rows[table] = await existing(database, table, [...ids]);
  const keys = new Set(Object.entries(rows).flatMap(([table, list]) => list.map(({ id }) => `${table}/${id}`)));
  for (const [table, ids] of wanted) for (const id of ids) keys.add(`${table}/${id}`);
  return { rows, rivals: await rivalsOf(database, keys), gone: await goneOf(database, keys) };
}

async function existing(database: RecordsDatabase, table: string, ids: readonly string[]): Promise<RowVersion[]> {
  const found = await database.table<RowVersion, string>(table).bulkGet([...ids]);
  return found.filter((row) => row !== undefined);
}

type TakeOf = { readonly surveyId: SurveyId; readonly instrumentId: InstrumentId };
/** From so many takes on, all of their instrument's are read at once: far faster than one by one. */
const MANY_TAKES = 200;

type TakesWanted = {
  readonly theirs: readonly RowVersion[];
  readonly ids: ReadonlySet<string>;
  readonly looksEverywhere: boolean;
};

async function ownTakes(
  database: RecordsDatabase,
  { theirs, ids, looksEverywhere }: TakesWanted,
): Promise<RowVersion[]> {
  const of = theirs.map((row) => row as unknown as TakeOf);
  const beside =
    ids.size < MANY_TAKES
      ? distinct(of.map(({ surveyId }) => surveyId)).map((surveyId) => rowsOfSurvey(database, surveyId).toArray())
      : distinct(of.map(({ instrumentId }) => instrumentId))
          .flatMap(bothFlags)
          .map((key) => database.takes.where('[instrumentId+keptFlag]').equals(key).toArray());
  const found: RowVersion[] = (await Promise.all(beside)).flat();
  const there = new Set(found.map(({ id }) => id));
  const isBelievedNew = new Set(looksEverywhere || ids.size < MANY_TAKES ? [] : theirs.map(({ id }) => id));
  const elsewhere = [...ids].filter((id) => !there.has(id) && !isBelievedNew.has(id));
  return [...found, ...(await existing(database, 'takes', elsewhere))];
}

function distinct<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}

/** Few rows have any: reading all is less than asking for each. */
async function rivalsOf(database: RecordsDatabase, keys: ReadonlySet<string>): Promise<RivalRow[]> {
  if ((await database.rivals.count()) === 0) return [];
  return database.rivals.filter(({ table, rowId }) => keys.has(`${table}/${rowId}`)).toArray();
}

async function goneOf(database: RecordsDatabase, keys: ReadonlySet<string>): Promise<GoneRow[]> {
  if ((await database.gone.count()) === 0) return [];
  return database.gone.filter(({ table, rowId }) => keys.has(`${table}/${rowId}`)).toArray();
}

function isMerged(table: string): boolean {
  return MERGED_TABLES.some((known) => known === table);
}
