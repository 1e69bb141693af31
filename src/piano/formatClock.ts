/** Clock offsets as people read them. */
import type { ClockOffset } from './clock.ts';
import { ppmToCents } from './clock.ts';
import { decimalsFor, formatNumber } from './format.ts';
import { figureWords } from './formatWords.ts';

/** The size alone; words say fast or slow. @example formatPpm({ offsetPpm: -23.4, offsetStandardUncertaintyPpm: 3 }) // '23 ± 3 ppm' */
export function formatPpm({ offsetPpm, offsetStandardUncertaintyPpm }: ClockOffset): string {
  const decimals = Math.min(decimalsFor(offsetStandardUncertaintyPpm, 1), offsetStandardUncertaintyPpm >= 1 ? 0 : 1);
  const least = 10 ** -decimals;
  const uncertainty = formatNumber(Math.max(offsetStandardUncertaintyPpm, least), decimals);
  return `${formatNumber(Math.abs(offsetPpm), decimals)} ± ${uncertainty} ppm`;
}

/** @example formatPpmAsCents(100) // '0.17 cents' */
export function formatPpmAsCents(offsetPpm: number): string {
  return `${formatNumber(Math.abs(ppmToCents(offsetPpm)), 2)} ${figureWords().cents}`;
}
