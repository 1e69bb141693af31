/**
 * What a key does in a sheet, as people know it from spreadsheets: arrows move, with Shift they choose more cells; typing replaces, F2
 * changes what stands there; Enter stores and goes down, Tab stores and goes right, Escape gives up. Tab leaves the sheet unless an entry is
 * under way, so that nobody is caught in it.
 */
import { type CellAt, opened, type SheetSize, type SheetState, wentTo } from './sheetState.ts';

export type KeyPress = {
  readonly key: string;
  readonly isShift: boolean;
  /** Control, or Command where the system uses that. */
  readonly isControl: boolean;
  readonly isAlt: boolean;
};

export type SheetCommand = 'clear' | 'fill-down' | 'undo' | 'redo' | 'choose-all';

export type SheetStep = {
  /** Where one stands afterwards; where something is stored, only if it could be. */
  readonly state: SheetState;
  /** Text to store in the cell where one stood. */
  readonly store?: string;
  readonly command?: SheetCommand;
};

export type SheetContext = { readonly size: SheetSize; readonly textAt: (at: CellAt) => string };

/** Rows that Page Up and Page Down pass over. */
const PAGE_ROWS = 12;

/** Null: the key is none of the sheet's, and the browser may have it. */
export function sheetKey(state: SheetState, press: KeyPress, context: SheetContext): SheetStep | null {
  if (press.isAlt) return null;
  return state.editing ? keyInCell(state, press, context) : keyBetweenCells(state, press, context);
}

function keyInCell(state: SheetState, press: KeyPress, context: SheetContext): SheetStep | null {
  const { key, isShift, isControl } = press;
  const { editing, at } = state;
  if (!editing || isControl) return null;
  const store = editing.text;
  if (key === 'Escape') return { state: { ...state, editing: null, runColumn: null } };
  if (key === 'Enter') return { state: goneOn(state, afterEnter(state, isShift), context), store };
  if (key === 'Tab') {
    const next = afterTab(state, isShift, context.size);
    return next ? { state: goneOn(state, next, context), store } : null;
  }
  const shift = editing.replaces ? ARROWS[key] : undefined;
  if (!shift) return null;
  const target = { row: at.row + shift.row, column: at.column + shift.column };
  return { state: { ...wentTo(state, target, context.size), runColumn: null }, store };
}

function keyBetweenCells(state: SheetState, press: KeyPress, context: SheetContext): SheetStep | null {
  const { key, isShift, isControl } = press;
  if (isControl) return controlKey(state, press, context.size);
  if (key === 'Enter') return { state: goneOn(state, afterEnter(state, isShift), context) };
  if (key === 'Tab') return tabBetweenCells(state, isShift, context);
  if (key === 'Escape') return { state: { ...state, anchor: state.at, runColumn: null } };
  if (key === 'F2') return { state: opened(state, { text: context.textAt(state.at), replaces: false, goesOn: false }) };
  if (key === 'Delete' || key === 'Backspace') return { state, command: 'clear' };
  const target = targetOf(state, key, context.size);
  if (target) return { state: { ...wentTo(state, target, context.size, isShift), runColumn: null } };
  if ([...key].length === 1 && key !== ' ')
    return { state: opened(state, { text: key, replaces: true, goesOn: false }) };
  return null;
}

const CONTROL_COMMANDS: Readonly<Record<string, SheetCommand>> = {
  z: 'undo',
  y: 'redo',
  d: 'fill-down',
  a: 'choose-all',
};

function controlKey(state: SheetState, { key, isShift }: KeyPress, size: SheetSize): SheetStep | null {
  const edges: Readonly<Record<string, CellAt>> = {
    Home: { row: 0, column: 0 },
    End: { row: size.rowCount - 1, column: size.columnCount - 1 },
    ArrowUp: { ...state.at, row: 0 },
    ArrowDown: { ...state.at, row: size.rowCount - 1 },
    ArrowLeft: { ...state.at, column: 0 },
    ArrowRight: { ...state.at, column: size.columnCount - 1 },
  };
  const edge = edges[key];
  if (edge) return { state: { ...wentTo(state, edge, size, isShift), runColumn: null } };
  const command = isShift && key.toLowerCase() === 'z' ? 'redo' : CONTROL_COMMANDS[key.toLowerCase()];
  if (!command) return null;
  if (command !== 'choose-all') return { state, command };
  const anchor = { row: 0, column: 0 };
  return { state: { ...state, anchor, at: { row: size.rowCount - 1, column: size.columnCount - 1 }, runColumn: null } };
}

const ARROWS: Readonly<Record<string, CellAt>> = {
  ArrowUp: { row: -1, column: 0 },
  ArrowDown: { row: 1, column: 0 },
  ArrowLeft: { row: 0, column: -1 },
  ArrowRight: { row: 0, column: 1 },
  PageUp: { row: -PAGE_ROWS, column: 0 },
  PageDown: { row: PAGE_ROWS, column: 0 },
};

function targetOf({ at }: SheetState, key: string, { columnCount }: SheetSize): CellAt | undefined {
  if (key === 'Home') return { ...at, column: 0 };
  if (key === 'End') return { ...at, column: columnCount - 1 };
  const shift = ARROWS[key];
  return shift && { row: at.row + shift.row, column: at.column + shift.column };
}

/** A run of entries goes on below its first cell. */
function afterEnter({ at, runColumn }: SheetState, isShift: boolean) {
  return { at: { row: at.row + (isShift ? -1 : 1), column: runColumn ?? at.column }, runColumn: null };
}

/** The next cell of the row, or the first one of the next row; undefined past the sheet's ends. */
function afterTab({ at, runColumn }: SheetState, isShift: boolean, { rowCount, columnCount }: SheetSize) {
  const index = at.row * columnCount + at.column + (isShift ? -1 : 1);
  if (index < 0 || index >= rowCount * columnCount) return undefined;
  const next = { row: Math.floor(index / columnCount), column: index % columnCount };
  return { at: next, runColumn: next.row === at.row ? (runColumn ?? at.column) : 0 };
}

function tabBetweenCells(state: SheetState, isShift: boolean, context: SheetContext): SheetStep | null {
  const next = state.runColumn === null ? undefined : afterTab(state, isShift, context.size);
  return next ? { state: goneOn(state, next, context) } : null;
}

type Next = { readonly at: CellAt; readonly runColumn: number | null };

function goneOn(state: SheetState, { at, runColumn }: Next, { size, textAt }: SheetContext): SheetState {
  const moved = { ...wentTo(state, at, size), runColumn };
  if (!state.editing?.goesOn) return moved;
  return opened(moved, { text: textAt(moved.at), replaces: false, goesOn: true });
}
