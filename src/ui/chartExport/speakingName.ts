/**
 * A file name that says what is in it: small letters, digits and hyphens, for every file system.
 * @example speakingName(['The music room grand', 'Life line'], 'csv') // 'the-music-room-grand-life-line.csv'
 */
export function speakingName(parts: readonly string[], extension: string): string {
  const name = parts
    .map((part) => part.replaceAll('♯', '-sharp').replaceAll('♭', '-flat'))
    .join(' ')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST)
    .replace(/-+$/, '');
  return `${name || 'chart'}.${extension}`;
}

/** Leaves room for folders within the 255 bytes that common file systems allow for a name. */
const LONGEST = 80;
