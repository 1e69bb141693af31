/** One table as a file in the archive, row by row. */
import type { PackagedFile } from './dataPackage.ts';
import { createRowEncoder } from './rowEncoder.ts';
import type { TableSpec } from './tableSpec.ts';
import type { ZipFileWriter } from './zipWriter.ts';

export type TableWriter = {
  /** True where enough has gathered that `flush` is due. */
  add(row: object): boolean;
  flush(): Promise<void>;
  finish(): Promise<PackagedFile>;
};

/** So many characters are gathered before they are compressed. */
const PIECE_LENGTH = 1 << 17;

export function fileOfTable(spec: TableSpec): string {
  return `${spec.name}.csv`;
}

/** @param file the archive's file for this table, which it ends */
export function createTableWriter(file: ZipFileWriter, spec: TableSpec): TableWriter {
  const encoder = createRowEncoder(spec);
  const utf8 = new TextEncoder();
  let text = encoder.header;
  let rowCount = 0;
  const flush = async () => {
    const piece = text;
    text = '';
    if (piece !== '') await file.push(utf8.encode(piece));
  };
  return {
    add(row) {
      text += encoder.line(row);
      rowCount += 1;
      return text.length >= PIECE_LENGTH;
    },
    flush,
    async finish() {
      await flush();
      return { ...(await file.finish()), name: spec.name, rowCount };
    },
  };
}
