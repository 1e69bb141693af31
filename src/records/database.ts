/**
 * The database and how its versions grow.
 *
 * Version 1: five tables; takes with their partials packed into typed arrays (packPartials.ts).
 * Version 2: a sixth table, the sounds of takes. The rows of the other five stay as they are; a take may now say which program
 * measured it and what its sound was read as before, which a program of version 1 would not know to keep in step.
 * Version 3: a seventh table, the calibrations of microphones. The rows of the other six stay as they are; a survey carries a copy
 * of the calibration that held when it was recorded.
 * Version 4: tables for torque, schedules, own wire tables, decisions, trials, photographs and their bytes; for what two people
 * changed apart (rivals), for what was deleted for good (gone), and for this device's own settings. Every row may carry a stamp and
 * a deletion (piano/stamp.ts); the other tables get an index of deletions. No row of version 3 changes.
 * To change what is stored: add a `version(5).stores({…}).upgrade(…)` below version 4 and leave the others as they are; the upgrade
 * reads old rows, checks them with that version's own schema, and writes new ones; rows that fail the check stay as they are.
 * Store a copy of a database of each version in tests/fixtures before it is released, and test that it opens.
 * Adding a field that may be missing needs no new version; giving a field a new meaning does.
 */
import { Dexie, type EntityTable, type Table } from 'dexie';
import type { ClockCalibration } from '../piano/clock.ts';
import type { InstrumentId, PhotographId, SurveyId, TakeId } from '../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Visit } from '../piano/instrument.ts';
import type { Photograph, PhotographFile } from '../piano/photograph.ts';
import type {
  BridgeTrial,
  OwnWireGrade,
  StringDecision,
  StringingSchedule,
  TorqueReading,
} from '../piano/stringingRecords.ts';
import { deviceIdOf } from './deviceId.ts';
import type { GoneRow, RivalRow, SettingRow, SoundRow, TakeRow } from './rows.ts';

export const SCHEMA_VERSION = 4;

export type RecordsDatabase = Dexie & {
  instruments: EntityTable<Instrument, 'id'>;
  events: EntityTable<InstrumentEvent, 'id'>;
  visits: EntityTable<Visit, 'id'>;
  surveys: EntityTable<Survey, 'id'>;
  takes: Table<TakeRow, TakeId>;
  sounds: Table<SoundRow, TakeId>;
  calibrations: EntityTable<ClockCalibration, 'id'>;
  torques: EntityTable<TorqueReading, 'id'>;
  schedules: EntityTable<StringingSchedule, 'id'>;
  wireGrades: EntityTable<OwnWireGrade, 'id'>;
  decisions: EntityTable<StringDecision, 'id'>;
  trials: EntityTable<BridgeTrial, 'id'>;
  photographs: EntityTable<Photograph, 'id'>;
  photographFiles: Table<PhotographFile, PhotographId>;
  rivals: EntityTable<RivalRow, 'id'>;
  gone: EntityTable<GoneRow, 'id'>;
  settings: Table<SettingRow, string>;
  /** Who edits, for the stamps of rows: a name made up once for this browser's records. */
  deviceId: string;
};

/** The slot of a take: for each of these there is at most one kept take. */
export type NoteSlot = readonly [SurveyId, number, number];
export type KeptKey = readonly [InstrumentId, 0 | 1];

/**
 * Writes are durable when they resolve: the browser is asked to put them on the disk itself, not only into the system's
 * buffers, since a tablet's battery may be empty at the next moment.
 */
export function createDatabase(databaseName: string): RecordsDatabase {
  const database = new Dexie(databaseName, { chromeTransactionDurability: 'strict' }) as RecordsDatabase;
  database.version(1).stores({
    instruments: 'id',
    events: 'id, instrumentId',
    visits: 'id, instrumentId',
    surveys: 'id, visitId, instrumentId',
    takes: 'id, [surveyId+midi+stringPosition], [instrumentId+keptFlag]',
  });
  database.version(2).stores({ sounds: 'id, [surveyId+byteCount], instrumentId' });
  database.version(3).stores({ calibrations: 'id, deviceLabel' });
  database.version(4).stores({
    instruments: 'id, deletionId',
    events: 'id, instrumentId, deletionId',
    visits: 'id, instrumentId, deletionId',
    surveys: 'id, visitId, instrumentId, deletionId',
    takes: 'id, [surveyId+midi+stringPosition], [instrumentId+keptFlag], deletionId',
    torques: 'id, instrumentId, visitId, deletionId',
    schedules: 'id, instrumentId, deletionId',
    wireGrades: 'id, deletionId',
    decisions: 'id, instrumentId, deletionId',
    trials: 'id, instrumentId, deletionId',
    photographs: 'id, instrumentId, deletionId',
    photographFiles: 'id, instrumentId',
    rivals: 'id, instrumentId',
    gone: 'id',
    settings: 'key',
  });
  return database;
}

export type RecordsUnavailableReason = 'no-database' | 'newer-version' | 'failed';

/** Why the records cannot be opened at all, for a screen to say so. */
export class RecordsUnavailableError extends Error {
  override readonly name = 'RecordsUnavailableError';
  readonly reason: RecordsUnavailableReason;
  constructor(reason: RecordsUnavailableReason, message: string, cause?: unknown) {
    super(message, { cause });
    this.reason = reason;
  }
}

/**
 * Opens the database, or says why not.
 * @param onBlocked told where another page holds an older version of the records open; opening goes on once it lets go
 * @throws {RecordsUnavailableError} always this one
 */
export async function openDatabase(databaseName: string, onBlocked?: () => void): Promise<RecordsDatabase> {
  const database = createDatabase(databaseName);
  database.on('blocked', () => {
    onBlocked?.();
    return false; // Dexie's own answer would be a warning to the console
  });
  database.on('ready', () => refuseNewer(database), true);
  try {
    await database.open();
  } catch (error) {
    database.close();
    throw unavailable(error);
  }
  return withDevice(database);
}

/** At every opening: Dexie opens by itself again where the browser closed the database, and by then it may be a newer one. */
function refuseNewer(database: RecordsDatabase): void {
  const storedVersion = Math.ceil(database.backendDB().version / DEXIE_VERSION_FACTOR);
  if (storedVersion <= SCHEMA_VERSION) return;
  throw new RecordsUnavailableError(
    'newer-version',
    `The records on this device were written by a newer version (${storedVersion}; this program knows ${SCHEMA_VERSION}). ` +
      'Load the newer program again; nothing was changed.',
  );
}

async function withDevice(database: RecordsDatabase): Promise<RecordsDatabase> {
  try {
    database.deviceId = await deviceIdOf(database.settings);
    return database;
  } catch (error) {
    database.close();
    throw unavailable(error);
  }
}

/** Dexie multiplies version numbers by ten, so that in-between versions remain possible (its documentation). */
const DEXIE_VERSION_FACTOR = 10;

function unavailable(error: unknown): RecordsUnavailableError {
  if (error instanceof RecordsUnavailableError) return error;
  const name = error instanceof Error ? error.name : '';
  if (name === 'MissingAPIError')
    return new RecordsUnavailableError(
      'no-database',
      'This browser offers no database to this page (a private window, perhaps). Open the page in an ordinary window.',
      error,
    );
  const detail = error instanceof Error ? error.message : String(error);
  return new RecordsUnavailableError('failed', `The records on this device could not be opened: ${detail}`, error);
}
