/** Reading takes back: by survey, by instrument, one. */
import type { Collection } from 'dexie';
import type { InstrumentId, SurveyId, TakeId } from '../piano/ids.ts';
import type { Take } from '../piano/instrument.ts';
import type { KeptKey, RecordsDatabase } from './database.ts';
import { rowToTake, type TakeRow } from './rows.ts';
import type { SoundRows } from './soundRows.ts';

export async function takeOf(database: RecordsDatabase, sound: SoundRows, id: TakeId): Promise<Take | undefined> {
  const row = sound.one('takes', await database.takes.get(id));
  return row && rowToTake(row);
}

export async function takesOfSurvey(database: RecordsDatabase, sound: SoundRows, surveyId: SurveyId): Promise<Take[]> {
  const rows = await rowsOfSurvey(database, surveyId).toArray();
  return sound.all('takes', rows).sort(byTime).map(rowToTake);
}

export async function keptTakesOfInstrument(
  database: RecordsDatabase,
  sound: SoundRows,
  instrumentId: InstrumentId,
): Promise<Take[]> {
  const kept: KeptKey = [instrumentId, 1];
  const rows = await database.takes
    .where('[instrumentId+keptFlag]')
    .equals([...kept])
    .toArray();
  return sound.all('takes', rows).sort(byTime).map(rowToTake);
}

/** In the database's order of keys a shorter array stands before a longer one, and an array after every number. */
export function rowsOfSurvey(database: RecordsDatabase, surveyId: SurveyId): Collection<TakeRow, TakeId> {
  return database.takes.where('[surveyId+midi+stringPosition]').between([surveyId], [surveyId, []]);
}

function byTime(a: TakeRow, b: TakeRow): number {
  if (a.recordedAt !== b.recordedAt) return a.recordedAt < b.recordedAt ? -1 : 1;
  return a.id < b.id ? -1 : 1;
}
