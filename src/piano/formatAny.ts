import { formatDate, formatNumber } from './format.ts';
import { figureWords } from './formatWords.ts';

/** Longer texts and lists are cut here; chosen to fit a table's cell. */
const LONGEST = 200;

/**
 * A value of any kind from a record, for somebody to compare two of them. Null and undefined give an empty text.
 * @example formatAny(41.25) // '41.25'
 */
export function formatAny(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return formatFigure(value);
  if (typeof value === 'boolean') return value ? figureWords().yes : figureWords().no;
  if (typeof value === 'string') return shortened(/^\d{4}-\d{2}-\d{2}$/.test(value) ? formatDate(value) : value);
  if (Array.isArray(value)) return shortened(value.map(formatAny).join(', '));
  return shortened(JSON.stringify(value) ?? '');
}

/** To six significant figures, without zeros that say nothing. */
function formatFigure(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  if (Number.isInteger(value)) return formatNumber(value, 0);
  const wholeDigits = Math.floor(Math.log10(Math.abs(value))) + 1;
  return formatNumber(value, Math.min(8, Math.max(0, 6 - wholeDigits)))
    .replace(/0+$/, '')
    .replace(/[.,]$/, '');
}

function shortened(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…`;
}
