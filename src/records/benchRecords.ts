/** Torque, schedules, own wire tables, decisions, trials and photographs: the rows that came with version 4. */
import type { Table } from 'dexie';
import type { InstrumentId, PhotographId } from '../piano/ids.ts';
import type { Photograph, PhotographFile } from '../piano/photograph.ts';
import type {
  BridgeTrial,
  OwnWireGrade,
  StringDecision,
  StringingSchedule,
  TorqueReading,
} from '../piano/stringingRecords.ts';
import { by } from './byKey.ts';
import type { RecordsDatabase } from './database.ts';
import { type RowOf, soundRow, type TableName } from './rowSchemas.ts';
import { editTables, putStamped, saveRow } from './saveRow.ts';
import type { SoundRows } from './soundRows.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export type BenchRecords = {
  torquesOf(instrumentId: InstrumentId): Promise<TorqueReading[]>;
  saveTorque(torque: TorqueReading): Promise<WriteOutcome>;

  /** By name. */
  schedulesOf(instrumentId: InstrumentId): Promise<StringingSchedule[]>;
  saveSchedule(schedule: StringingSchedule): Promise<WriteOutcome>;

  listWireGrades(): Promise<OwnWireGrade[]>;
  saveWireGrade(grade: OwnWireGrade): Promise<WriteOutcome>;

  /** By date of the decision. */
  decisionsOf(instrumentId: InstrumentId): Promise<StringDecision[]>;
  /** All of them or none. */
  saveDecisions(decisions: readonly StringDecision[]): Promise<WriteOutcome>;

  trialsOf(instrumentId: InstrumentId): Promise<BridgeTrial[]>;
  saveTrial(trial: BridgeTrial): Promise<WriteOutcome>;

  photographsOf(instrumentId: InstrumentId): Promise<Photograph[]>;
  photographFile(id: PhotographId): Promise<PhotographFile | undefined>;
  /** The photograph and its bytes together, or neither. */
  addPhotograph(photograph: Photograph, file: PhotographFile): Promise<WriteOutcome>;
  /** Its caption or what it belongs to; the bytes stay. */
  savePhotograph(photograph: Photograph): Promise<WriteOutcome>;
};

type OfInstrument = 'torques' | 'schedules' | 'decisions' | 'trials' | 'photographs';

export function benchFunctions(database: RecordsDatabase, sound: SoundRows): BenchRecords {
  const rowsOf = async <Name extends OfInstrument>(tableName: Name, instrumentId: InstrumentId) => {
    const table = database.table(tableName) as Table<RowOf[Name]>;
    return sound.all(tableName, await table.where({ instrumentId }).toArray());
  };
  const save =
    <Name extends TableName>(tableName: Name) =>
    (row: RowOf[Name]): Promise<WriteOutcome> =>
      saveRow(database, tableName, row);
  return {
    torquesOf: async (id) => (await rowsOf('torques', id)).sort(by((row) => row.visitId)),
    saveTorque: save('torques'),
    schedulesOf: async (id) => (await rowsOf('schedules', id)).sort(by((row) => row.name)),
    saveSchedule: save('schedules'),
    listWireGrades: async () =>
      sound.all('wireGrades', await database.wireGrades.toArray()).sort(by((row) => row.name)),
    saveWireGrade: save('wireGrades'),
    decisionsOf: async (id) => (await rowsOf('decisions', id)).sort(by((row) => row.decidedOn)),
    saveDecisions: (decisions) => saveDecisions(database, decisions),
    trialsOf: async (id) => (await rowsOf('trials', id)).sort(by((row) => row.triedAt)),
    saveTrial: save('trials'),
    photographsOf: async (id) => (await rowsOf('photographs', id)).sort(by((row) => row.addedAt)),
    photographFile: async (id) => sound.one('photographFiles', await database.photographFiles.get(id)),
    addPhotograph: (photograph, file) => addPhotograph(database, photograph, file),
    savePhotograph: save('photographs'),
  };
}

function saveDecisions(database: RecordsDatabase, decisions: readonly StringDecision[]): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    const rows = decisions.map((decision) => soundRow('decisions', decision));
    return database.transaction('rw', editTables('decisions'), async () => {
      for (const row of rows) await putStamped(database, 'decisions', row);
      return { written: true as const };
    });
  });
}

function addPhotograph(database: RecordsDatabase, photograph: Photograph, file: PhotographFile): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    const row = soundRow('photographs', photograph);
    const fileRow = soundRow('photographFiles', file);
    return database.transaction('rw', editTables('photographs', 'photographFiles'), async () => {
      await database.photographFiles.put(fileRow);
      await putStamped(database, 'photographs', row);
      return { written: true as const };
    });
  });
}
