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

/** In pieces, survey by survey: the takes of many years in one answer would keep the page from answering. */
export async function keptTakesOfInstrument(
  database: RecordsDatabase,
  sound: SoundRows,
  instrumentId: InstrumentId,
): Promise<Take[]> {
  const keptKey: KeptKey = [instrumentId, 1];
  const kept = database.takes.where('[instrumentId+keptFlag]').equals([...keptKey]);
  const surveyIds = await database.surveys.where({ instrumentId }).primaryKeys();
  let foundCount = 0;
  const perSurvey = await Promise.all(
    surveyIds.map(async (surveyId) => {
      const rows = await rowsOfSurvey(database, surveyId).toArray();
      const own = rows.filter((row) => row.keptFlag === 1 && row.instrumentId === instrumentId);
      foundCount += own.length;
      return sound.all('takes', own).map(rowToTake);
    }),
  );
  if ((await kept.count()) === foundCount) return perSurvey.flat().sort(byTime);
  // There are takes of a survey that is not there, as a damaged archive may have brought them.
  return sound
    .all('takes', await kept.toArray())
    .map(rowToTake)
    .sort(byTime);
}

/** In the database's order of keys a shorter array stands before a longer one, and an array after every number. */
export function rowsOfSurvey(database: RecordsDatabase, surveyId: SurveyId): Collection<TakeRow, TakeId> {
  return database.takes.where('[surveyId+midi+stringPosition]').between([surveyId], [surveyId, []]);
}

type InTime = Pick<Take, 'recordedAt' | 'id'>;

function byTime(a: InTime, b: InTime): number {
  if (a.recordedAt !== b.recordedAt) return a.recordedAt < b.recordedAt ? -1 : 1;
  return a.id < b.id ? -1 : 1;
}
