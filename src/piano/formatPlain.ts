/** Figures for people who are no technicians: one decimal at most, no uncertainty behind them. */
import { formatNumber } from './format.ts';
import { figureLocale } from './formatLanguage.ts';
import { figureWords } from './formatWords.ts';
import { writeDate } from './writeDate.ts';

const NO_BREAK_SPACE = '\u00a0';

/** The size without a sign. @example formatCentsSize(-4.04) // '4.0 cents' */
export function formatCentsSize(cents: number): string {
  return `${formatNumber(Math.abs(cents), 1)}${NO_BREAK_SPACE}${figureWords().cents}`;
}

/** In full. @example formatMonthInFull('2026-09-14') // 'September 2026' */
export function formatMonthInFull(isoDate: string, language = figureLocale()): string {
  const time = Date.parse(isoDate.slice(0, 10));
  if (Number.isNaN(time)) return isoDate;
  return writeDate('monthInFull', time, language);
}
