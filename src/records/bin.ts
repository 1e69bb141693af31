/** What was deleted and can still be brought back. */
import type { InstrumentId, VisitId } from '../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../piano/instrument.ts';
import type { Photograph } from '../piano/photograph.ts';
import type {
  BridgeTrial,
  OwnWireGrade,
  StringDecision,
  StringingSchedule,
  TorqueReading,
} from '../piano/stringingRecords.ts';
import type { RecordsDatabase } from './database.ts';
import { DELETABLE_TABLES, type DeletableRow, rootOf, tableOf } from './deletionTree.ts';

/** What was deleted: the row that was named, of all that went with it. A take comes without its figures. */
export type Deleted =
  | { readonly table: 'instruments'; readonly row: Instrument }
  | { readonly table: 'visits'; readonly row: Visit }
  | { readonly table: 'surveys'; readonly row: Survey }
  | { readonly table: 'takes'; readonly row: Omit<Take, 'reading' | 'isKept' | 'earlierReadings'> }
  | { readonly table: 'events'; readonly row: InstrumentEvent }
  | { readonly table: 'torques'; readonly row: TorqueReading }
  | { readonly table: 'schedules'; readonly row: StringingSchedule }
  | { readonly table: 'decisions'; readonly row: StringDecision }
  | { readonly table: 'trials'; readonly row: BridgeTrial }
  | { readonly table: 'photographs'; readonly row: Photograph }
  | { readonly table: 'wireGrades'; readonly row: OwnWireGrade };

export type BinEntry = {
  readonly deletionId: string;
  readonly deletedAt: string;
  readonly what: Deleted;
  /** Of the instrument it belonged to; null for an instrument itself and for a wire table. */
  readonly instrumentName: string | null;
  /** Of the visit it belonged to, deleted or not; null where it belonged to none. */
  readonly visitedOn: string | null;
  /** Rows that come back with it, itself included. */
  readonly rowCount: number;
};

/** The latest deletion first. Counts come from the index: no take is read. */
export async function listBin(database: RecordsDatabase): Promise<BinEntry[]> {
  return database.transaction('r', [...DELETABLE_TABLES], async () => {
    const counts = await countsByDeletion(database);
    const entries = await Promise.all([...counts].map(([id, rowCount]) => entryOf(database, id, rowCount)));
    return entries.flatMap((entry) => entry ?? []).sort((a, b) => (a.deletedAt < b.deletedAt ? 1 : -1));
  });
}

export async function countsByDeletion(database: RecordsDatabase): Promise<Map<string, number>> {
  const counts = new Map<string, number>();
  for (const table of DELETABLE_TABLES) {
    const deletionIds = await tableOf(database, table).orderBy('deletionId').uniqueKeys();
    for (const deletionId of deletionIds as string[]) {
      const count = await tableOf(database, table).where({ deletionId }).count();
      counts.set(deletionId, (counts.get(deletionId) ?? 0) + count);
    }
  }
  return counts;
}

async function entryOf(database: RecordsDatabase, deletionId: string, rowCount: number): Promise<BinEntry | undefined> {
  const root = await rootOf(database, deletionId);
  if (!root) return undefined;
  const { instrumentId, visitId } = root.row as DeletableRow & {
    instrumentId?: InstrumentId;
    visitId?: VisitId | null;
  };
  const instrument = instrumentId === undefined ? undefined : await database.instruments.get(instrumentId);
  const visit = visitId === undefined || visitId === null ? undefined : await database.visits.get(visitId);
  return {
    deletionId,
    deletedAt: root.row.deletedAt ?? '',
    what: root as unknown as Deleted,
    instrumentName: instrument?.name ?? null,
    visitedOn: visit?.visitedOn ?? null,
    rowCount,
  };
}
