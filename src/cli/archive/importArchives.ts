/** `archive import FILE.zip… --into RECORDS.zip`: several archives together. */
import { type Terminal, UsageFault } from '../terminal.ts';

export function importArchives(_args: readonly string[], _terminal: Terminal): Promise<number> {
  return Promise.reject(new UsageFault('archive import is not in this version'));
}
