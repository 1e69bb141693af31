/** Names of files in an archive. Nothing is ever unpacked to such a name by this program, but by others it may be. */

/** What is wrong with a name, in words; undefined for one that is safe on every system. */
export function pathFault(path: string): string | undefined {
  if (path === '') return 'a file without a name';
  if (path.length > LONGEST_PATH) return `a name of more than ${LONGEST_PATH} characters`;
  if (path.includes('\\')) return 'a backslash in a name';
  if (path.startsWith('/') || /^[A-Za-z]:/.test(path)) return 'a name that leads outside the archive';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters in names are what is looked for
  if (/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/.test(path)) return 'a control character in a name';
  if (path.includes(':')) return 'a colon in a name';
  const parts = path.replace(/\/$/, '').split('/');
  if (parts.some((part) => part === '..' || part === '.')) return 'a name that leads outside the archive';
  if (parts.includes('')) return 'an empty folder name';
  return undefined;
}

const LONGEST_PATH = 255;

/** As file systems see it that do not tell capitals from small letters, or composed from decomposed characters. */
export function foldedPath(path: string): string {
  return path.normalize('NFC').toLowerCase();
}

/** A file name made of an id, where the id allows it; else of a number. @example fileNameOf('3f-b', 7) // '3f-b' */
export function fileNameOf(id: string, number: number): string {
  return /^[a-z0-9][a-z0-9-]{0,79}$/.test(id) ? id : `number_${number}`;
}
