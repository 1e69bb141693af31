/** Aligned columns for a terminal. */

export type Column<Row> = {
  readonly title: string;
  /** Figures stand right, words left. */
  readonly align: 'left' | 'right';
  readonly text: (row: Row) => string;
};

/** Columns whose cells are all empty are left out. */
export function textTable<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const filled = columns
    .map((column) => ({ column, cells: rows.map((row) => plainSpaces(column.text(row))) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''))
    .map(({ column, cells }) => padded(column.align, [column.title, ...cells]));
  return Array.from({ length: rows.length + 1 }, (_, line) =>
    filled
      .map((cells) => cells[line])
      .join('  ')
      .trimEnd(),
  ).join('\n');
}

function padded(align: 'left' | 'right', cells: readonly string[]): string[] {
  const width = Math.max(...cells.map(characterCount));
  return cells.map((cell) => {
    const space = ' '.repeat(width - characterCount(cell));
    return align === 'left' ? cell + space : space + cell;
  });
}

/** Thin and no-break spaces are for pages: terminals differ in how wide they draw them, and searches miss them. */
function plainSpaces(text: string): string {
  return text.replace(/[\u00a0\u2009\u202f]/g, ' ');
}

function characterCount(text: string): number {
  return [...text].length;
}
