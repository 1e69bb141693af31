/** What a sheet of cells shows, as plain data. */
import type { CellAt, CellRange } from './sheetState.ts';

export type SheetColumn = {
  readonly key: string;
  readonly title: string;
  /** Under the title. */
  readonly unit?: string;
  /** Which keyboard a tablet brings up. */
  readonly inputMode: 'numeric' | 'decimal' | 'text';
  readonly isNumber: boolean;
  /** Words that are usual here, offered while typing. */
  readonly offers?: readonly string[];
};

export type SheetCell = {
  readonly text: string;
  /** The same said otherwise, small, behind it. */
  readonly beside?: string;
  readonly isInterpolated: boolean;
  /** What is wrong or worth a look, in words. */
  readonly complaint: { readonly severity: 'fault' | 'look'; readonly words: string } | null;
};

export type SheetRow = { readonly key: string; readonly name: string; readonly cells: readonly SheetCell[] };

/** Why a text was not taken, and what may have been meant. */
export type SheetRefusal = {
  readonly message: string;
  readonly meanings: readonly { readonly label: string; readonly text: string }[];
};

export type SheetData = {
  readonly label: string;
  readonly rowTitle: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
};

/** What a sheet asks its owner to do. */
export type SheetActions = {
  /** Null where it was taken. */
  readonly store: (at: CellAt, text: string) => SheetRefusal | null;
  readonly clear: (range: CellRange) => void;
  readonly fillDown: (range: CellRange) => void;
  readonly paste: (text: string, range: CellRange) => void;
  readonly undo: () => void;
  readonly redo: () => void;
};

export function cellAt(rows: readonly SheetRow[], at: CellAt): SheetCell | undefined {
  return rows[at.row]?.cells[at.column];
}

/** The cells of a range as a spreadsheet's clipboard holds them: tabs between cells, a line a row. */
export function copiedText(rows: readonly SheetRow[], range: CellRange): string {
  return rows
    .slice(range.fromRow, range.toRow + 1)
    .map(({ cells }) =>
      cells
        .slice(range.fromColumn, range.toColumn + 1)
        .map(({ text }) => text)
        .join('\t'),
    )
    .join('\r\n');
}
