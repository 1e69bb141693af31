/** What the steps of writing an archive share. */

import type { LeftOut, RowSource } from './archiveContents.ts';
import { ArchiveFault } from './archiveFault.ts';
import type { PackagedFile } from './dataPackage.ts';
import type { ParentIds } from './parentIds.ts';
import type { Spool } from './spool.ts';
import type { TableSpec } from './tableSpec.ts';
import { createTableWriter, fileOfTable } from './writeTable.ts';
import type { ZipWriter } from './zipWriter.ts';

export type WriteProgress = { readonly table: string; readonly rowCount: number };

export type Writing = {
  readonly zip: ZipWriter;
  readonly parents: ParentIds;
  readonly leaveOut: readonly LeftOut[];
  readonly files: PackagedFile[];
  /** Rows whose parents are not there. */
  readonly unattached: { table: string; rowId: string; row: unknown }[];
  /** Makes room for a file that is written beside another one; undefined where there is none. */
  readonly createSpool: (() => Spool) | undefined;
  /** Hands on what was written; stops where it was asked to. */
  passOn(progress: WriteProgress): Promise<void>;
};

/** Rows whose parents are missing are set aside, to be written as unattached at the end. */
export async function writeRows(
  writing: Writing,
  spec: TableSpec,
  rows: RowSource<object> | undefined,
  recordKind = spec.name,
): Promise<void> {
  const table = createTableWriter(writing.zip.file(fileOfTable(spec), false), spec);
  let rowCount = 0;
  for await (const row of rows ?? []) {
    if (!writing.parents.accept(spec, row)) {
      writing.unattached.push({ table: recordKind, rowId: String((row as { id?: unknown }).id ?? ''), row });
      continue;
    }
    rowCount += 1;
    if (!table.add(row)) continue;
    await table.flush();
    await writing.passOn({ table: spec.name, rowCount });
  }
  writing.files.push(await table.finish());
  await writing.passOn({ table: spec.name, rowCount });
}

/** @throws {ArchiveFault} always */
export function recordsChanged(): never {
  const message = 'the records were changed while they were written out; write the archive again';
  throw new ArchiveFault('records-changed', { file: null, row: null, column: null, message });
}
