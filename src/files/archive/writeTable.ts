/** One table as a file in the archive, row by row. */
import { csvLine } from './csvText.ts';
import type { PackagedFile } from './dataPackage.ts';
import { createRowEncoder, type RowEncoder } from './rowEncoder.ts';
import type { TableSpec } from './tableSpec.ts';
import type { ZipFileWriter, ZipWriter } from './zipWriter.ts';

export type TableWriter = {
  /** True where enough has gathered that `flush` is due. */
  add(row: object): boolean;
  flush(): Promise<void>;
  finish(): Promise<PackagedFile>;
};

/** So many characters are gathered before they are compressed. */
const PIECE_LENGTH = 1 << 17;

export function createTableWriter(zip: ZipWriter, spec: TableSpec): TableWriter {
  const encoder = createRowEncoder(spec);
  const path = `${spec.name}.csv`;
  return tableWriter(spec.name, zip.file(path, false), encoder);
}

function tableWriter(name: string, file: ZipFileWriter, encoder: RowEncoder): TableWriter {
  const utf8 = new TextEncoder();
  let text = csvLine(encoder.header);
  let rowCount = 0;
  const flush = async () => {
    const piece = text;
    text = '';
    if (piece !== '') await file.push(utf8.encode(piece));
  };
  return {
    add(row) {
      text += csvLine(encoder.cells(row));
      rowCount += 1;
      return text.length >= PIECE_LENGTH;
    },
    flush,
    async finish() {
      await flush();
      return { ...(await file.finish()), name, rowCount };
    },
  };
}
