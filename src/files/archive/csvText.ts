/** Cells and rows as the text of a CSV file (RFC 4180). */

const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/;

export function quotedCell(text: string): string {
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** @param cells in quotation marks where they need them */
export function csvLine(cells: readonly string[]): string {
  return `${cells.join(',')}\r\n`;
}
