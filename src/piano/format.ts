/**
 * Numbers, dates and notes as people read them. Screens and pages format here and nowhere else.
 *
 * A figure with a standard uncertainty shows the uncertainty to two significant digits at most and the value to the same
 * place (Guide to the expression of uncertainty in measurement, JCGM 100:2008, 7.2.6), never finer than the limit given.
 * A minus is the true minus sign, so that columns of figures line up. `null` (could not be measured) is an en dash. The decimal sign,
 * dates and the words inside figures follow the language that was said (formatLanguage.ts), units the choice of units (formatUnits.ts);
 * the examples are in English and metric. Digits are not grouped: no figure here is long enough to need it.
 */
import { figureLocale, withDecimalSign } from './formatLanguage.ts';
import { shownTemperature, shownUnits } from './formatUnits.ts';
import { figureWords } from './formatWords.ts';
import { midiToName } from './note.ts';
import { writeDate } from './writeDate.ts';

export const NOT_MEASURED = '–';
const MINUS = '−';
const THIN_SPACE = '\u2009';
const NO_BREAK_SPACE = '\u00a0';

/** @example formatNumber(-1.25, 1) // '−1.3' */
export function formatNumber(value: number, decimalCount: number): string {
  const text = withDecimalSign(Math.abs(value).toFixed(decimalCount));
  return value < 0 && !isShownAsZero(value, decimalCount) ? MINUS + text : text;
}

/** Whether nothing but noughts is left of a value in so many decimals. */
function isShownAsZero(value: number, decimalCount: number): boolean {
  return Number(value.toFixed(decimalCount)) === 0;
}

/** With a sign before everything but zero. @example formatSigned(1.25, 1) // '+1.3' */
export function formatSigned(value: number, decimalCount: number): string {
  const text = formatNumber(value, decimalCount);
  return value > 0 && !isShownAsZero(value, decimalCount) ? `+${text}` : text;
}

/** How many decimals a value with this standard uncertainty deserves, from 0 to `mostDecimals`. */
export function decimalsFor(standardUncertainty: number, mostDecimals: number): number {
  if (!(standardUncertainty > 0)) return mostDecimals;
  const decimals = 1 - Math.floor(Math.log10(standardUncertainty));
  return Math.min(Math.max(decimals, 0), mostDecimals);
}

/** @example formatNote(54) // 'F♯3' */
export function formatNote(midi: number): string {
  return midiToName(midi).replace('#', '♯');
}

/** @example formatRange('60 %', '65 %') // '60 % to 65 %' */
export function formatRange(from: string, to: string): string {
  return figureWords().range(from, to);
}

/** @example formatNoteRange(59, 69) // 'B3 to A4' */
export function formatNoteRange(fromMidi: number, toMidi: number): string {
  return fromMidi === toMidi ? formatNote(fromMidi) : formatRange(formatNote(fromMidi), formatNote(toMidi));
}

/** Notes in rising order; three or more neighbours as a range. @example formatNotes([60, 62, 63, 64]) // 'C4, D4 to E4' */
export function formatNotes(midis: readonly number[]): string {
  const runs: [from: number, to: number][] = [];
  for (const midi of midis) {
    const run = runs.at(-1);
    if (run && midi === run[1] + 1) run[1] = midi;
    else runs.push([midi, midi]);
  }
  const names = runs.flatMap(([from, to]) =>
    to === from + 1 ? [formatNote(from), formatNote(to)] : [formatNoteRange(from, to)],
  );
  return names.join(', ');
}

/** An offset or a change in cents, without its unit. Two decimals at most: finer than any string stays. */
export function formatCentsValue(offsetCents: number | null, standardUncertaintyCents?: number | null): string {
  if (offsetCents === null) return NOT_MEASURED;
  return formatSigned(offsetCents, centsDecimals(standardUncertaintyCents));
}

/** The standard uncertainty of such an offset. @example formatCentsUncertainty(0.31) // '± 0.31' */
export function formatCentsUncertainty(standardUncertaintyCents: number | null): string {
  if (standardUncertaintyCents === null) return NOT_MEASURED;
  return plusMinus(standardUncertaintyCents, centsDecimals(standardUncertaintyCents));
}

/** An uncertainty too small for the decimals shown is said to be below the last place, never to be zero. */
function plusMinus(standardUncertainty: number, decimalCount: number): string {
  return `±${THIN_SPACE}${formatUncertaintyValue(standardUncertainty, decimalCount)}`;
}

/** The same without its sign. @example formatUncertaintyValue(0.003, 1) // '<0.1' */
export function formatUncertaintyValue(standardUncertainty: number, decimalCount: number): string {
  const isBelow = standardUncertainty > 0 && isShownAsZero(standardUncertainty, decimalCount);
  return isBelow
    ? `<${formatNumber(10 ** -decimalCount, decimalCount)}`
    : formatNumber(standardUncertainty, decimalCount);
}

/** @example formatCents(-1.02, 0.31) // '−1.02 ± 0.31 cents' */
export function formatCents(offsetCents: number | null, standardUncertaintyCents?: number | null): string {
  if (offsetCents === null) return NOT_MEASURED;
  const value = formatCentsValue(offsetCents, standardUncertaintyCents);
  const uncertainty = standardUncertaintyCents == null ? '' : ` ${formatCentsUncertainty(standardUncertaintyCents)}`;
  return `${value}${uncertainty}${NO_BREAK_SPACE}${figureWords().cents}`;
}

/** From one reading of a sound to another, finer than any uncertainty. @example formatChangeCents(-0.0123) // '−0.012 cents' */
export function formatChangeCents(changeCents: number): string {
  return `${formatSigned(changeCents, 3)}${NO_BREAK_SPACE}${figureWords().cents}`;
}

/** How far cents scatter, without a sign. @example formatSpreadCents(0.123) // '0.12 cents' */
export function formatSpreadCents(spreadCents: number): string {
  return `${formatNumber(spreadCents, centsDecimals(spreadCents))}${NO_BREAK_SPACE}${figureWords().cents}`;
}

function centsDecimals(standardUncertaintyCents: number | null | undefined): number {
  return standardUncertaintyCents == null ? 1 : decimalsFor(standardUncertaintyCents, 2);
}

/** @example formatHz(219.8712, 0.0021) // '219.8712 ± 0.0021 Hz' */
export function formatHz(frequencyHz: number | null, standardUncertaintyHz?: number | null): string {
  if (frequencyHz === null) return NOT_MEASURED;
  if (standardUncertaintyHz == null) return `${formatNumber(frequencyHz, 1)}${NO_BREAK_SPACE}Hz`;
  const decimals = decimalsFor(standardUncertaintyHz, 4);
  const uncertainty = plusMinus(standardUncertaintyHz, decimals);
  return `${formatNumber(frequencyHz, decimals)} ${uncertainty}${NO_BREAK_SPACE}Hz`;
}

/** A pitch standard: whole numbers bare, others with one decimal. @example formatPitchStandard(440) // 'A4 = 440 Hz' */
export function formatPitchStandard(pitchStandardHz: number): string {
  const decimals = Number.isInteger(pitchStandardHz) ? 0 : 1;
  return `A4 = ${formatNumber(pitchStandardHz, decimals)}${NO_BREAK_SPACE}Hz`;
}

/** As a hygrometer was read: whole, or with the one decimal that was noted. @example formatHumidity(48.5) // '48.5 % RH' */
export function formatHumidity(humidityPct: number | null): string {
  if (humidityPct === null) return NOT_MEASURED;
  return `${formatNumber(humidityPct, humidityDecimals(humidityPct))}${THIN_SPACE}${figureWords().rh}`;
}

/** How many decimals a read humidity, or the difference of two, is shown with. */
export function humidityDecimals(humidityPct: number): number {
  return isShownAsZero(humidityPct - Math.round(humidityPct), 1) ? 0 : 1;
}

export function formatTemperature(temperatureC: number | null): string {
  if (temperatureC === null) return NOT_MEASURED;
  return `${formatNumber(shownTemperature(temperatureC), 1)}${NO_BREAK_SPACE}${shownUnits().temperature}`;
}

/** A level relative to full scale. @example formatLevel(-18.2) // '−18 dB' */
export function formatLevel(levelDbfs: number | null): string {
  return levelDbfs === null ? NOT_MEASURED : `${formatNumber(levelDbfs, 0)}${NO_BREAK_SPACE}dB`;
}

/** @example formatSeconds(4.12) // '4.1 s' */
export function formatSeconds(durationS: number | null): string {
  return durationS === null ? NOT_MEASURED : `${formatNumber(durationS, durationS < 10 ? 1 : 0)}${NO_BREAK_SPACE}s`;
}

/** Seconds beside an axis. @example formatDuration(0.5) // '0.5 s' */
export function formatDuration(durationS: number): string {
  return `${formatNumber(durationS, durationS < 1 ? 1 : 0)}${NO_BREAK_SPACE}s`;
}

/** Time still to go, in words coarse enough to be true. @example formatTimeLeft(190) // 'about 3 minutes left' */
export function formatTimeLeft(durationS: number): string {
  return durationS < 45 ? figureWords().lessThanAMinuteLeft : figureWords().minutesLeft(Math.round(durationS / 60));
}

/** @example formatBeatRate(0.62) // '0.62 beats a second' */
export function formatBeatRate(rateHz: number | null): string {
  if (rateHz === null) return NOT_MEASURED;
  return `${formatNumber(rateHz, rateHz < 10 ? 2 : 1)} ${figureWords().beatsASecond}`;
}

/** @example formatInharmonicity(0.000212, 0.000002) // '(2.120 ± 0.020) × 10⁻⁴' */
export function formatInharmonicity(inharmonicityB: number | null, standardUncertainty?: number | null): string {
  if (inharmonicityB === null) return NOT_MEASURED;
  if (!(inharmonicityB > 0)) return formatNumber(inharmonicityB, 6);
  const exponent = Math.floor(Math.log10(inharmonicityB));
  const scale = 10 ** exponent;
  const power = `× 10${superscript(exponent)}`;
  if (standardUncertainty == null) return `${formatNumber(inharmonicityB / scale, 2)} ${power}`;
  const decimals = decimalsFor(standardUncertainty / scale, 4);
  const value = formatNumber(inharmonicityB / scale, decimals);
  return `(${value} ${plusMinus(standardUncertainty / scale, decimals)}) ${power}`;
}

/** A figure beside an axis that spans powers of ten. @example formatPower(0.0005) // '5 × 10⁻⁴' */
export function formatPower(value: number): string {
  const exponent = Math.floor(Math.log10(value) + 1e-9);
  const factor = formatNumber(value / 10 ** exponent, 0);
  const power = `10${superscript(exponent)}`;
  return factor === '1' ? power : `${factor}${THIN_SPACE}×${THIN_SPACE}${power}`;
}

/** A share as a percentage. @example formatShare(0.043) // '4 %' */
export function formatShare(share: number): string {
  const percent = 100 * share;
  return `${formatNumber(percent, percent < 2 ? 1 : 0)}${THIN_SPACE}%`;
}

function superscript(exponent: number): string {
  const digits = '⁰¹²³⁴⁵⁶⁷⁸⁹';
  const text = [...String(Math.abs(exponent))].map((digit) => digits[Number(digit)]).join('');
  return exponent < 0 ? `⁻${text}` : text;
}

/**
 * A calendar date, or the date part of a date and time, in words. Text that is no date comes back as it is.
 * @example formatDate('2019-03-02') // '2 March 2019'
 */
export function formatDate(isoDate: string, language = figureLocale()): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})/.exec(isoDate);
  if (!parts) return isoDate;
  return writeDate('date', Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])), language);
}

/** How long an interval is. @example formatYears(0.61) // '7 months' */
export function formatYears(years: number): string {
  const monthCount = Math.round(years * 12);
  if (monthCount < 1) return figureWords().lessThanAMonth;
  return monthCount < 24 ? figureWords().months(monthCount) : figureWords().years(formatNumber(years, 1));
}

/** @example formatCount(1, 'visit', 'visits') // '1 visit' */
export function formatCount(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Text from elsewhere as a sentence. @example formatSentence('no beat was found') // 'No beat was found.' */
export function formatSentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === '') return '';
  const end = /[.!?…]$/.test(trimmed) ? '' : '.';
  return `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}${end}`;
}
