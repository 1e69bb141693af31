import { withDecimalSign } from './formatLanguage.ts';

/** What stands for minus on keyboards and in our own figures. */
const MINUS_SIGNS = /^[-−–]/;

/**
 * A typed number, with point or comma whichever language is chosen, and with any minus. A sign for thousands is not understood, since
 * it cannot be told from a decimal one. Null for an empty field, undefined for anything else that is no number.
 * @example readFigure('−1,5') // -1.5
 */
export function readFigure(text: string): number | null | undefined {
  const tidy = text.trim();
  if (tidy === '') return null;
  const plain = tidy.replace(MINUS_SIGNS, '-').replace(',', '.');
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

/** The same, within limits: undefined outside them. */
export function readFigureWithin(text: string, least: number, most: number): number | null | undefined {
  const value = readFigure(text);
  return value == null || (value >= least && value <= most) ? value : undefined;
}

/** A number as it stands in a field that can be changed: all its digits, with the language's decimal sign. @example writeFigure(41.5) // '41.5' */
export function writeFigure(value: number): string {
  return withDecimalSign(String(value));
}
