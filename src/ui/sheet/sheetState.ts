/** Where one stands in a sheet of cells, which of them are chosen, and what is being typed. Every step gives a new state. */

export type CellAt = { readonly row: number; readonly column: number };
export type SheetSize = { readonly rowCount: number; readonly columnCount: number };

/** Both ends included. */
export type CellRange = {
  readonly fromRow: number;
  readonly toRow: number;
  readonly fromColumn: number;
  readonly toColumn: number;
};

export type Editing = {
  readonly text: string;
  /** Typed in place of what stood there: arrow keys then leave the cell, as they do between cells. */
  readonly replaces: boolean;
  /** Begun by touch: the next cell opens too, so that the keyboard on the screen stays. */
  readonly goesOn: boolean;
};

export type SheetState = {
  readonly at: CellAt;
  /** The other corner of what is chosen; the same cell where one alone is. */
  readonly anchor: CellAt;
  readonly editing: Editing | null;
  /** Column in which a row of entries with Tab began: Enter goes on below it. Null where none is under way. */
  readonly runColumn: number | null;
};

export const FIRST_STATE: SheetState = {
  at: { row: 0, column: 0 },
  anchor: { row: 0, column: 0 },
  editing: null,
  runColumn: null,
};

export function rangeOf({ at, anchor }: Pick<SheetState, 'at' | 'anchor'>): CellRange {
  return {
    fromRow: Math.min(at.row, anchor.row),
    toRow: Math.max(at.row, anchor.row),
    fromColumn: Math.min(at.column, anchor.column),
    toColumn: Math.max(at.column, anchor.column),
  };
}

export function isOneCell({ fromRow, toRow, fromColumn, toColumn }: CellRange): boolean {
  return fromRow === toRow && fromColumn === toColumn;
}

/** Goes to a cell, or to the nearest one there is; what was typed is let go. */
export function wentTo(state: SheetState, wanted: CellAt, size: SheetSize, isExtending = false): SheetState {
  const at = {
    row: within(wanted.row, size.rowCount),
    column: within(wanted.column, size.columnCount),
  };
  return { ...state, at, anchor: isExtending ? state.anchor : at, editing: null };
}

export function opened(state: SheetState, editing: Editing): SheetState {
  return { ...state, anchor: state.at, editing };
}

function within(index: number, count: number): number {
  return Math.min(Math.max(index, 0), Math.max(count - 1, 0));
}
