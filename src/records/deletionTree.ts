/** What can be deleted, and what hangs on it and goes with it. */
import type { Collection } from 'dexie';
import type { InstrumentId, SurveyId, VisitId } from '../piano/ids.ts';
import type { Stamped } from '../piano/stamp.ts';
import type { RecordsDatabase } from './database.ts';
import { bothFlags } from './recordSet.ts';
import type { RowOf } from './rowSchemas.ts';
import { rowsOfSurvey } from './takeReads.ts';

/**
 * From what holds most to what holds nothing else: the first of these tables in which a deletion has a row names what was deleted.
 * Sounds and the bytes of photographs are not marked: they are shown with their take or photograph or not at all.
 */
export const DELETABLE_TABLES = [
  'instruments',
  'visits',
  'surveys',
  'takes',
  'events',
  'torques',
  'schedules',
  'decisions',
  'trials',
  'photographs',
  'wireGrades',
] as const;

export type DeletableTable = (typeof DELETABLE_TABLES)[number];

/** The name of one row: `{ table: 'visits', id }`. */
export type Deletable = {
  [Name in DeletableTable]: { readonly table: Name; readonly id: RowOf[Name]['id'] };
}[DeletableTable];

export type DeletableRow = Stamped & { readonly id: string; readonly instrumentId?: InstrumentId };

type Rows = Collection<DeletableRow, string>;
export type RowsOfTable = { readonly table: DeletableTable; readonly rows: Rows };

/** The row itself and all that hangs on it, deleted or not. Inside a transaction. */
export async function rowsOf(database: RecordsDatabase, target: Deletable): Promise<RowsOfTable[]> {
  const itself = { table: target.table, rows: tableOf(database, target.table).where({ id: target.id }) };
  return [itself, ...(await rowsUnder(database, target))];
}

export function tableOf(database: RecordsDatabase, table: DeletableTable) {
  return database.table<DeletableRow, string>(table);
}

async function rowsUnder(database: RecordsDatabase, target: Deletable): Promise<RowsOfTable[]> {
  switch (target.table) {
    case 'instruments':
      return rowsOfInstrument(database, target.id);
    case 'visits':
      return rowsOfVisit(database, target.id);
    case 'surveys':
      return rowsUnderSurvey(database, target.id);
    default:
      return [];
  }
}

function rowsOfInstrument(database: RecordsDatabase, instrumentId: InstrumentId): RowsOfTable[] {
  const takes = tableOf(database, 'takes').where('[instrumentId+keptFlag]').anyOf(bothFlags(instrumentId));
  const others = (
    ['visits', 'surveys', 'events', 'torques', 'schedules', 'decisions', 'trials', 'photographs'] as const
  ).map((table) => ({ table, rows: tableOf(database, table).where({ instrumentId }) }));
  return [{ table: 'takes', rows: takes }, ...others];
}

async function rowsOfVisit(database: RecordsDatabase, visitId: VisitId): Promise<RowsOfTable[]> {
  const visit = await database.visits.get(visitId);
  const instrumentId = visit?.instrumentId ?? '';
  const surveyIds = await database.surveys.where({ visitId }).primaryKeys();
  const ofVisit = (table: 'trials' | 'photographs'): RowsOfTable => ({
    table,
    rows: tableOf(database, table)
      .where({ instrumentId })
      .filter((row) => (row as { visitId?: unknown }).visitId === visitId),
  });
  return [
    { table: 'surveys', rows: tableOf(database, 'surveys').where({ visitId }) },
    ...surveyIds.map((surveyId) => takesOf(database, surveyId)),
    { table: 'torques', rows: tableOf(database, 'torques').where({ visitId }) },
    ofVisit('trials'),
    ofVisit('photographs'),
  ];
}

async function rowsUnderSurvey(database: RecordsDatabase, surveyId: SurveyId): Promise<RowsOfTable[]> {
  const survey = await database.surveys.get(surveyId);
  const trials = tableOf(database, 'trials')
    .where({ instrumentId: survey?.instrumentId ?? '' })
    .filter((row) => (row as { surveyId?: unknown }).surveyId === surveyId);
  return [takesOf(database, surveyId), { table: 'trials', rows: trials }];
}

function takesOf(database: RecordsDatabase, surveyId: SurveyId): RowsOfTable {
  return { table: 'takes', rows: rowsOfSurvey(database, surveyId) as unknown as Rows };
}

export type DeletionRoot = { readonly table: DeletableTable; readonly row: DeletableRow };

/** What was deleted, of all the rows that one deletion took. */
export async function rootOf(database: RecordsDatabase, deletionId: string): Promise<DeletionRoot | undefined> {
  for (const table of DELETABLE_TABLES) {
    const row = await tableOf(database, table).where({ deletionId }).first();
    if (row) return { table, row };
  }
  return undefined;
}
