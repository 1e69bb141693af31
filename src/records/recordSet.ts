/** Many records at once: for an archive, a backup, a merge, the demonstration. */
import type { Table } from 'dexie';
import type { InstrumentId } from '../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../piano/instrument.ts';
import type { BridgeTrial, StringDecision, StringingSchedule, TorqueReading } from '../piano/stringingRecords.ts';
import type { RecordsDatabase } from './database.ts';
import { type RowOf, soundRow } from './rowSchemas.ts';
import { rowToTake, takeToRow } from './rows.ts';
import type { SoundRows } from './soundRows.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export type RecordSet = {
  readonly instruments: readonly Instrument[];
  readonly events: readonly InstrumentEvent[];
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  readonly takes: readonly Take[];
  readonly torques: readonly TorqueReading[];
  readonly schedules: readonly StringingSchedule[];
  readonly decisions: readonly StringDecision[];
  readonly trials: readonly BridgeTrial[];
};

/**
 * Inserts or updates everything in one transaction: all of it or, where anything fails, nothing.
 * Which takes are kept is taken from their flags as they are.
 */
export function writeRecordSet(database: RecordsDatabase, set: RecordSet): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    const takes = set.takes.map((take) => soundRow('takes', takeToRow(take)));
    const instruments = set.instruments.map((row) => soundRow('instruments', row));
    const events = set.events.map((row) => soundRow('events', row));
    const visits = set.visits.map((row) => soundRow('visits', row));
    const surveys = set.surveys.map((row) => soundRow('surveys', row));
    const torques = set.torques.map((row) => soundRow('torques', row));
    const schedules = set.schedules.map((row) => soundRow('schedules', row));
    const decisions = set.decisions.map((row) => soundRow('decisions', row));
    const trials = set.trials.map((row) => soundRow('trials', row));
    return database.transaction('rw', database.tables, async () => {
      await database.instruments.bulkPut(instruments);
      await database.events.bulkPut(events);
      await database.visits.bulkPut(visits);
      await database.surveys.bulkPut(surveys);
      await database.takes.bulkPut(takes);
      await database.torques.bulkPut(torques);
      await database.schedules.bulkPut(schedules);
      await database.decisions.bulkPut(decisions);
      await database.trials.bulkPut(trials);
      return { written: true as const };
    });
  });
}

/** Everything in the database, or everything of one instrument, as it stood at one moment. */
export async function readRecordSet(
  database: RecordsDatabase,
  sound: SoundRows,
  instrumentId?: InstrumentId,
): Promise<RecordSet> {
  return database.transaction('r', database.tables, async () => {
    const { instruments, events, visits, surveys, takes } = database;
    const isAll = instrumentId === undefined;
    const takeRows = isAll
      ? takes.toCollection()
      : takes.where('[instrumentId+keptFlag]').anyOf(bothFlags(instrumentId));
    return {
      instruments: sound.all(
        'instruments',
        await (isAll ? instruments.toCollection() : instruments.where({ id: instrumentId })).toArray(),
      ),
      events: sound.all('events', await (isAll ? events.toCollection() : events.where({ instrumentId })).toArray()),
      visits: sound.all('visits', await (isAll ? visits.toCollection() : visits.where({ instrumentId })).toArray()),
      surveys: sound.all('surveys', await (isAll ? surveys.toCollection() : surveys.where({ instrumentId })).toArray()),
      takes: sound.all('takes', await takeRows.toArray()).map(rowToTake),
      ...(await readBench(database, sound, instrumentId)),
    };
  });
}

type BenchTable = 'torques' | 'schedules' | 'decisions' | 'trials';

async function readBench(
  database: RecordsDatabase,
  sound: SoundRows,
  instrumentId: InstrumentId | undefined,
): Promise<Pick<RecordSet, BenchTable>> {
  const own = async <Name extends BenchTable>(name: Name) => {
    const table = database.table(name) as Table<RowOf[Name]>;
    const found = instrumentId === undefined ? table.toCollection() : table.where({ instrumentId });
    return sound.all(name, await found.toArray());
  };
  return {
    torques: await own('torques'),
    schedules: await own('schedules'),
    decisions: await own('decisions'),
    trials: await own('trials'),
  };
}

/** Index keys of all takes of an instrument: set aside and kept. */
export function bothFlags(instrumentId: InstrumentId): [InstrumentId, 0 | 1][] {
  return [
    [instrumentId, 0],
    [instrumentId, 1],
  ];
}
