/** Rows of cells as the text of a CSV file (RFC 4180). */

const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/;

export function csvLine(cells: readonly string[]): string {
  let line = '';
  for (let index = 0; index < cells.length; index++) {
    const cell = cells[index] ?? '';
    if (index > 0) line += ',';
    line += NEEDS_QUOTES.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
  }
  return `${line}\r\n`;
}
