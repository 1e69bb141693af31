/** Sounds and pictures as ordinary files in the archive, and the tables that say what each of them is. */
import type { TakeSound } from '../../piano/instrument.ts';
import type { Photograph, PhotographFile } from '../../piano/photograph.ts';
import type { RowSource } from './archiveContents.ts';
import { photographs } from './benchTables.ts';
import { sounds } from './readingTables.ts';
import { fileNameOf } from './safePath.ts';
import { type Writing, writeRows } from './writing.ts';

export async function writeSounds(writing: Writing, source: RowSource<TakeSound> | undefined): Promise<void> {
  const rows: object[] = [];
  for await (const sound of source ?? []) {
    const { bytes, ...fields } = sound;
    if (!writing.parents.has('readings', sound.id)) {
      writing.unattached.push({ table: 'sounds', rowId: sound.id, row: sound });
      continue;
    }
    const path = `sounds/${fileNameOf(sound.id, rows.length + 1)}.flac`;
    await writeFile(writing, path, bytes);
    rows.push({ ...withoutByteCount(fields), path });
  }
  await writeRows(writing, sounds, rows);
}

/** The records keep the size beside a sound; here the file has it. */
function withoutByteCount(fields: object): object {
  const { byteCount: _, ...rest } = fields as { byteCount?: unknown };
  return rest;
}

const EXTENSIONS: Readonly<Record<Photograph['mediaType'], string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

export async function writePictures(
  writing: Writing,
  source: RowSource<Photograph> | undefined,
  files: RowSource<PhotographFile> | undefined,
): Promise<void> {
  const rows: Photograph[] = [];
  for await (const row of source ?? []) rows.push(row);
  const mediaTypes = new Map(rows.map(({ id, mediaType }) => [id, mediaType]));
  const paths = new Map<string, string>();
  for await (const file of files ?? []) {
    const mediaType = mediaTypes.get(file.id);
    if (mediaType === undefined) {
      writing.unattached.push({ table: 'photographFiles', rowId: file.id, row: file });
      continue;
    }
    const path = `photographs/${fileNameOf(file.id, paths.size + 1)}.${EXTENSIONS[mediaType]}`;
    await writeFile(writing, path, file.bytes);
    paths.set(file.id, path);
  }
  await writeRows(
    writing,
    photographs,
    rows.map((row) => ({ ...row, path: paths.get(row.id) ?? null })),
  );
}

async function writeFile({ zip, files, passOn }: Writing, path: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  const file = zip.file(path, true);
  await file.push(bytes);
  files.push({ ...(await file.finish()), name: path.replace(/\.\w+$/, ''), rowCount: null });
  await passOn({ table: path.slice(0, path.indexOf('/')), rowCount: files.length });
}
