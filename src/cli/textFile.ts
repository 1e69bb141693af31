/** A text file named on the command line. */
import { readFile } from 'node:fs/promises';
import { unreadable } from './fileBytes.ts';
import { UsageFault } from './terminal.ts';

/** @throws {UsageFault} with one sentence that names the file, if it cannot be read as text in UTF-8 */
export async function readTextFile(file: string): Promise<string> {
  const bytes = await readFile(file).catch((error: unknown) => {
    throw unreadable(file, error);
  });
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UsageFault(`cannot read ${file}: it is not text in UTF-8; save it in UTF-8`);
  }
}
