/** Slips, responses and probabilities as people read them. */
import {
  decimalsFor,
  formatNumber,
  formatSigned,
  formatUncertaintyValue,
  humidityDecimals,
  NOT_MEASURED,
} from './format.ts';
import { figureLocale } from './formatLanguage.ts';
import { figureWords } from './formatWords.ts';
import { writeDate } from './writeDate.ts';

const THIN_SPACE = '\u2009';
const NO_BREAK_SPACE = '\u00a0';

function withUncertainty(value: number, standardUncertainty: number | null, mostDecimals: number): string {
  if (standardUncertainty === null) return formatSigned(value, 1);
  const decimals = Math.max(1, decimalsFor(standardUncertainty, mostDecimals));
  return `${formatSigned(value, decimals)} ±${THIN_SPACE}${formatUncertaintyValue(standardUncertainty, decimals)}`;
}

/** @example formatRate(-2.41, 0.31) // '−2.41 ± 0.31 cents a year' */
export function formatRate(centsPerYear: number | null, standardUncertainty: number | null = null): string {
  if (centsPerYear === null) return NOT_MEASURED;
  return `${withUncertainty(centsPerYear, standardUncertainty, 2)}${NO_BREAK_SPACE}${figureWords().centsAYear}`;
}

/** The same without its unit, for a column that names it. @example formatRateValue(-2.41, 0.31) // '−2.41 ± 0.31' */
export function formatRateValue(centsPerYear: number | null, standardUncertainty: number | null = null): string {
  return centsPerYear === null ? NOT_MEASURED : withUncertainty(centsPerYear, standardUncertainty, 2);
}

/** How fast, whichever way it goes. @example formatSpeed(0.6) // '0.6 cents a year' */
export function formatSpeed(centsPerYear: number): string {
  return `${formatNumber(Math.abs(centsPerYear), 1)}${NO_BREAK_SPACE}${figureWords().centsAYear}`;
}

/** @example formatResponse(0.81, 0.05) // '+0.81 ± 0.05 cents per % RH' */
export function formatResponse(centsPerPct: number, standardUncertainty: number): string {
  return `${withUncertainty(centsPerPct, standardUncertainty, 2)} ${figureWords().centsPerRh}`;
}

/** Never nought and never certain: a judgement from readings is neither. @example formatProbability(0.997) // 'more than 99 %' */
export function formatProbability(probability: number | null): string {
  if (probability === null) return NOT_MEASURED;
  if (probability > 0.99) return `${figureWords().moreThan} 99${THIN_SPACE}%`;
  if (probability < 0.01) return `${figureWords().lessThan} 1${THIN_SPACE}%`;
  return `${formatNumber(100 * probability, 0)}${THIN_SPACE}%`;
}

/** A difference of two humidities that were read. @example formatHumidityChange(-12.5) // '−12.5 % RH' */
export function formatHumidityChange(changePct: number | null): string {
  if (changePct === null) return NOT_MEASURED;
  return `${formatSigned(changePct, humidityDecimals(changePct))}${THIN_SPACE}${figureWords().rh}`;
}

/** A humidity reckoned from many readings, to whole percents. @example formatWholeHumidity(45.37) // '45 % RH' */
export function formatWholeHumidity(humidityPct: number): string {
  return `${formatNumber(humidityPct, 0)}${THIN_SPACE}${figureWords().rh}`;
}

/** With its uncertainty, always above zero. @example formatHumidityAbout(52.3, 4.1) // '52 ± 4 % RH' */
export function formatHumidityAbout(humidityPct: number, standardUncertaintyPct: number): string {
  return `${formatNumber(humidityPct, 0)} ±${THIN_SPACE}${formatNumber(Math.max(1, standardUncertaintyPct), 0)}${THIN_SPACE}${figureWords().rh}`;
}

/** Beside an axis of visits. @example formatMonth('2021-05-12') // 'May 2021' */
export function formatMonth(isoDate: string, language = figureLocale()): string {
  const time = Date.parse(isoDate.slice(0, 10));
  if (Number.isNaN(time)) return isoDate;
  return writeDate('month', time, language);
}

/** @example formatYearCount(2.5) // '2.5 years' */
export function formatYearCount(years: number): string {
  return figureWords().years(formatNumber(years, Number.isInteger(Math.round(10 * years) / 10) ? 0 : 1));
}
