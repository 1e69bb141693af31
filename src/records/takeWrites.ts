/**
 * Storing takes. For each note and string of a survey one take at most is the kept one; the others stay, set aside.
 *
 * A take with `isKept` true asks for the place. It gets it where the place is empty; where it is taken, `isBetter` decides,
 * and without it the newcomer wins. A take with `isKept` false is stored aside.
 */
import { hzToCents } from '../piano/cents.ts';
import type { TakeId } from '../piano/ids.ts';
import type { Measured, Take } from '../piano/instrument.ts';
import { midiToHz } from '../piano/note.ts';
import type { NoteReading } from '../piano/reading.ts';
import type { NoteSlot, RecordsDatabase } from './database.ts';
import { soundRow } from './rowSchemas.ts';
import { rowToTake, type TakeRow, takeToRow } from './rows.ts';
import { editTables, putStamped } from './saveRow.ts';
import { isDeleted, unstamped } from './soundRows.ts';
import { NotARecordError, outcomeOf, type WriteFailure, type WriteOutcome } from './writeOutcome.ts';

export type KeepTakeOptions = {
  /** Whether the newcomer is to replace the take that is kept now. */
  readonly isBetter?: (newcomer: Take, keptNow: Take) => boolean;
};

export type KeepTakeOutcome =
  | {
      readonly written: true;
      /** Whether this take is now the kept one of its note and string. */
      readonly isKept: boolean;
      /** The take that was kept until now and was set aside for this one. */
      readonly setAside: TakeId | null;
    }
  | WriteFailure;

export function keepTake(
  database: RecordsDatabase,
  take: Take,
  options: KeepTakeOptions = {},
): Promise<KeepTakeOutcome> {
  return outcomeOf(async () => {
    const row = soundRow('takes', takeToRow(take));
    return database.transaction('rw', editTables('takes'), async () => {
      const keptNow = row.keptFlag === 1 ? await otherKeptRow(database, row) : undefined;
      const wins = keptNow === undefined || (options.isBetter?.(take, rowToTake(unstamped(keptNow))) ?? true);
      if (keptNow && wins) await putStamped(database, 'takes', { ...keptNow, keptFlag: 0 });
      const keptFlag = wins ? row.keptFlag : 0;
      await putStamped(database, 'takes', { ...row, keptFlag });
      return { written: true as const, isKept: keptFlag === 1, setAside: keptNow && wins ? keptNow.id : null };
    });
  });
}

/** Makes a take the kept one of its note and string, setting the one that was aside; or sets it aside itself. */
export function setKept(database: RecordsDatabase, takeId: TakeId, isKept: boolean): Promise<WriteOutcome> {
  return changeTake(database, takeId, (row) => ({ ...row, keptFlag: isKept ? 1 : 0 }));
}

/**
 * Moves a take to another note. Its offset in cents is counted from the new note; the frequencies stay as measured, so a take
 * that was taken for its octave should be measured again and the new reading handed in.
 * A kept take asks for its place at the new note and wins it: whoever corrects a note means it.
 */
export function changeTakeNote(
  database: RecordsDatabase,
  takeId: TakeId,
  midi: number,
  remeasured?: NoteReading,
): Promise<WriteOutcome> {
  return changeTake(database, takeId, (row) => {
    const take = rowToTake(row);
    const reading = remeasured ?? movedReading(take.reading, midi);
    if (reading.midi !== midi)
      throw new NotARecordError(`the reading handed in is of note ${reading.midi}, the take is to be note ${midi}`);
    return takeToRow({ ...take, midi, reading });
  });
}

export type FurtherReading = {
  readonly takeId: TakeId;
  readonly reading: NoteReading;
  readonly measured: Measured;
};

/**
 * Further readings of takes' sounds, all of them or none. Each is the one shown from now on; the one before stays with its take.
 * Which take of its note is kept does not change.
 */
export function addReadings(database: RecordsDatabase, further: readonly FurtherReading[]): Promise<WriteOutcome> {
  return outcomeOf(() =>
    database.transaction('rw', editTables('takes'), async () => {
      for (const { takeId, reading, measured } of further)
        await putStamped(database, 'takes', withReading(await foundRow(database, takeId), reading, measured));
      return { written: true as const };
    }),
  );
}

function withReading(row: TakeRow, reading: NoteReading, measured: Measured): TakeRow {
  const take = rowToTake(row);
  if (reading.midi !== take.midi || reading.stringPosition !== take.stringPosition)
    throw new NotARecordError(`the reading handed in is of note ${reading.midi}, the take is of note ${take.midi}`);
  const before = { reading: take.reading, measured: take.measured ?? null };
  const earlierReadings = [...(take.earlierReadings ?? []), before];
  return soundRow('takes', takeToRow({ ...take, reading, measured, earlierReadings }));
}

function movedReading(reading: NoteReading, midi: number): NoteReading {
  if (!Number.isInteger(midi)) throw new NotARecordError(`midi must be a whole number, got ${midi}`);
  const offsetCents = hzToCents(reading.partial1Hz, midiToHz(midi, reading.pitchStandardHz));
  return { ...reading, midi, offsetCents };
}

function changeTake(
  database: RecordsDatabase,
  takeId: TakeId,
  change: (row: TakeRow) => TakeRow,
): Promise<WriteOutcome> {
  return outcomeOf(() =>
    database.transaction('rw', editTables('takes'), async () => {
      const row = await foundRow(database, takeId);
      const changed = soundRow('takes', change(row));
      const keptNow = changed.keptFlag === 1 ? await otherKeptRow(database, changed) : undefined;
      if (keptNow) await putStamped(database, 'takes', { ...keptNow, keptFlag: 0 });
      await putStamped(database, 'takes', changed);
      return { written: true as const };
    }),
  );
}

async function foundRow(database: RecordsDatabase, takeId: TakeId): Promise<TakeRow> {
  const row = await database.takes.get(takeId);
  if (!row || isDeleted(row)) throw new NotARecordError(`there is no take ${takeId}`);
  return row;
}

export type TakeSlot = Pick<TakeRow, 'id' | 'surveyId' | 'midi' | 'stringPosition' | 'keptFlag'>;

/** The kept take at the place of this one, if it is another. Inside a transaction. */
export async function otherKeptRow(database: RecordsDatabase, row: TakeSlot): Promise<TakeRow | undefined> {
  const slot: NoteSlot = [row.surveyId, row.midi, row.stringPosition];
  const inSlot = database.takes.where('[surveyId+midi+stringPosition]').equals([...slot]);
  return inSlot.filter((other) => other.keptFlag === 1 && other.id !== row.id && !isDeleted(other)).first();
}
