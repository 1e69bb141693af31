/** Sounds and pictures of an archive: added where their take or photograph is here and they are not. Nobody edits them. */
import type { Archive, ReadOptions } from '../files/archive/readArchive.ts';
import type { TakeSound } from '../piano/instrument.ts';
import type { PhotographFile } from '../piano/photograph.ts';
import type { RecordsDatabase } from './database.ts';
import { soundRow } from './rowSchemas.ts';
import { soundToRow } from './rows.ts';

type FileOptions = Omit<ReadOptions, 'kinds'> & { readonly isDryRun: boolean };
type FileCounts = { readonly soundCount: number; readonly photographCount: number };

/** A transaction each: some files more or less are not half a record. */
export async function addFiles(
  database: RecordsDatabase,
  archive: Archive,
  { isDryRun, ...reading }: FileOptions,
): Promise<FileCounts> {
  let [soundCount, photographCount] = [0, 0];
  for await (const batch of archive.batches({ ...reading, kinds: ['sounds', 'photographs'] })) {
    if (batch.kind === 'sounds')
      for (const sound of batch.rows) if (await addSound(database, sound, isDryRun)) soundCount += 1;
    if (batch.kind === 'photographFiles')
      for (const file of batch.rows) if (await addPicture(database, file, isDryRun)) photographCount += 1;
  }
  return { soundCount, photographCount };
}

/** In a dry run the take may not be here yet, since it comes with the same archive. */
function addSound(database: RecordsDatabase, sound: TakeSound, isDryRun: boolean): PromiseLike<boolean> {
  const { takes, sounds } = database;
  return database.transaction(isDryRun ? 'r' : 'rw', takes, sounds, async () => {
    if ((await sounds.where({ id: sound.id }).count()) > 0) return false;
    if (isDryRun) return true;
    if ((await takes.where({ id: sound.id }).count()) === 0) return false;
    await sounds.put(soundRow('sounds', soundToRow(sound)));
    return true;
  });
}

function addPicture(database: RecordsDatabase, file: PhotographFile, isDryRun: boolean): PromiseLike<boolean> {
  const { photographs, photographFiles } = database;
  return database.transaction(isDryRun ? 'r' : 'rw', photographs, photographFiles, async () => {
    if ((await photographFiles.where({ id: file.id }).count()) > 0) return false;
    if (isDryRun) return true;
    if ((await photographs.where({ id: file.id }).count()) === 0) return false;
    await photographFiles.put(soundRow('photographFiles', file));
    return true;
  });
}
