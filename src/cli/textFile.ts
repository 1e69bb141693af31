/** A text file named on the command line. */
import { readFile } from 'node:fs/promises';
import { UsageFault } from './terminal.ts';

/** @throws {UsageFault} with one sentence that names the file, if it cannot be read as text in UTF-8 */
export async function readTextFile(file: string): Promise<string> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(file));
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === 'ENOENT') throw new UsageFault(`${file} is not there; check the name`);
    if (code === 'EISDIR') throw new UsageFault(`${file} is a folder; name a file in it`);
    if (error instanceof TypeError) throw new UsageFault(`${file} is not text in UTF-8; save it as CSV in UTF-8`);
    throw new UsageFault(`${file} cannot be read (${code ?? String(error)})`);
  }
}
