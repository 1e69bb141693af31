/** The sounds of takes: each written by itself, after its take and never with it, so that a full disk costs a sound and no reading. */
import type { SurveyId, TakeId } from '../piano/ids.ts';
import type { TakeSound } from '../piano/instrument.ts';
import type { RecordsDatabase } from './database.ts';
import { soundRow } from './rowSchemas.ts';
import { rowToSound, soundToRow } from './rows.ts';
import { isDeleted, type SoundRows } from './soundRows.ts';
import { rowsOfSurvey } from './takeReads.ts';
import { NotARecordError, outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export type SoundSizes = {
  /** Takes whose sound is there. */
  readonly takeIds: readonly TakeId[];
  readonly byteCount: number;
};

export function saveSound(database: RecordsDatabase, sound: TakeSound): Promise<WriteOutcome> {
  return outcomeOf(async () => {
    const row = soundRow('sounds', soundToRow(sound));
    return database.transaction('rw', database.takes, database.sounds, async () => {
      const isTaken = (await database.takes.where({ id: row.id }).count()) > 0;
      if (!isTaken) throw new NotARecordError(`there is no take ${row.id} for this sound`);
      await database.sounds.put(row);
      return { written: true as const };
    });
  });
}

export async function soundOf(
  database: RecordsDatabase,
  sound: SoundRows,
  takeId: TakeId,
): Promise<TakeSound | undefined> {
  const row = sound.one('sounds', await database.sounds.get(takeId));
  return row && rowToSound(row);
}

/** From the index alone: no sound is read. Of all surveys, sounds of deleted takes count too, since they take room; of one they do not. */
export async function soundSizes(database: RecordsDatabase, surveyId?: SurveyId): Promise<SoundSizes> {
  const table = database.sounds;
  const rows = () =>
    surveyId === undefined
      ? table.orderBy('[surveyId+byteCount]')
      : table.where('[surveyId+byteCount]').between([surveyId], [surveyId, []]);
  return database.transaction('r', table, database.takes, async () => {
    const keys = (await rows().keys()) as unknown as [SurveyId, number][];
    const takeIds = await rows().primaryKeys();
    const sizes = keys.map(([, byteCount], index) => ({ id: takeIds[index], byteCount }));
    const hidden = surveyId === undefined || keys.length === 0 ? new Set() : await deletedTakes(database, surveyId);
    const shown = sizes.filter(({ id }) => !hidden.has(id));
    return {
      takeIds: takeIds.filter((id) => !hidden.has(id)),
      byteCount: shown.reduce((sum, { byteCount }) => sum + byteCount, 0),
    };
  });
}

async function deletedTakes(database: RecordsDatabase, surveyId: SurveyId): Promise<ReadonlySet<unknown>> {
  return new Set(await rowsOfSurvey(database, surveyId).filter(isDeleted).primaryKeys());
}
