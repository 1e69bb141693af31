import { formatNumber } from './format.ts';
import { figureWords } from './formatWords.ts';

const UNITS = ['bytes', 'kB', 'MB', 'GB'] as const;

/** Sizes in memory and on disks, decimal units. @example formatSize(31_400_000) // '31 MB' */
export function formatSize(byteCount: number): string {
  let value = byteCount;
  let unit = 0;
  while (unit < UNITS.length - 1 && Math.round(value) >= 1000) {
    value /= 1000;
    unit += 1;
  }
  const decimalCount = unit > 0 && value < 9.95 ? 1 : 0;
  return `${formatNumber(value, decimalCount)}\u00a0${unit === 0 ? figureWords().bytes : UNITS[unit]}`;
}
