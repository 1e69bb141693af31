/** Which program writes an archive. */
import { version } from '../../../package.json';

export function programVersion(): string {
  return version;
}
