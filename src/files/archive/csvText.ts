/** Cells and rows as the text of a CSV file (RFC 4180). */

const NEEDS_QUOTES = /[",\r\n]|^\s|\s$/;

export function quotedCell(text: string): string {
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** In quotation marks where it needs them; or a finite number other than -0, still without its digits. */
export type Cell = string | number;

export function csvLine(cells: readonly Cell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

/** The shortest decimal figures that give back the same 64-bit number, with an E before an exponent. */
function cellText(cell: Cell): string {
  return typeof cell === 'string' ? cell : withLargeE(String(cell));
}

function withLargeE(digits: string): string {
  return digits.includes('e') ? digits.replaceAll('e', 'E') : digits;
}

type Part = { readonly from: number; readonly numbers: (number | null)[] };

/**
 * Makes lines of a table, as `csvLine` does: numbers that stand side by side become text all at once, as JSON writes a list of them (the
 * same digits, ECMA-262), which takes half the time.
 * @param isNumber of each column
 */
export function createLineWriter(isNumber: readonly boolean[]): (cells: readonly Cell[]) => string {
  const parts: Part[] = [];
  for (const [from, isOne] of isNumber.entries())
    if (isOne && from > 0 && isNumber[from - 1]) parts.at(-1)?.numbers.push(null);
    else parts.push({ from, numbers: [null] });
  return (cells) => {
    let line = '';
    for (const part of parts) {
      const text = part.numbers.length > 1 ? numbersText(part, cells) : cellText(cells[part.from] ?? '');
      line = part.from === 0 ? text : `${line},${text}`;
    }
    return `${line}\r\n`;
  };
}

function numbersText({ from, numbers }: Part, cells: readonly Cell[]): string {
  let isAnyEmpty = false;
  for (let index = 0; index < numbers.length; index++) {
    const cell = cells[from + index] ?? '';
    if (typeof cell === 'number') numbers[index] = cell;
    else if (cell !== '')
      return cells
        .slice(from, from + numbers.length)
        .map(cellText)
        .join(',');
    else {
      numbers[index] = null;
      isAnyEmpty = true;
    }
  }
  const text = withLargeE(JSON.stringify(numbers).slice(1, -1));
  return isAnyEmpty ? text.replaceAll('null', '') : text;
}
