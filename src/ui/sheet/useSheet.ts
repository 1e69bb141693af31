import { useState } from 'react';
import { type KeyPress, type SheetCommand, sheetKey } from './sheetKeys.ts';
import { cellAt, type SheetActions, type SheetData, type SheetRefusal } from './sheetModel.ts';
import { type CellAt, FIRST_STATE, opened, rangeOf, type SheetState, wentTo } from './sheetState.ts';

export type SheetView = {
  readonly state: SheetState;
  /** Why what was typed last was not taken. */
  readonly refusal: SheetRefusal | null;
  /** True where the sheet had the key. */
  readonly press: (press: KeyPress) => boolean;
  readonly type: (text: string) => void;
  readonly goTo: (at: CellAt, isExtending?: boolean) => void;
  /** Opens a cell to change what stands in it. */
  readonly open: (at: CellAt, goesOn: boolean) => void;
  /** The focus went elsewhere: what was typed is stored, or refused and let go. */
  readonly leave: () => void;
  /** Stores what a refused text may have meant, and goes on. */
  readonly take: (text: string) => void;
  /** Brings the focus to the cell where one stands, from elsewhere on the page. */
  readonly focusCell: () => void;
  /** Counts how often that was asked for. */
  readonly focusCount: number;
};

export function useSheet(data: SheetData, actions: SheetActions): SheetView {
  const [state, setState] = useState<SheetState>(FIRST_STATE);
  const [refusal, setRefusal] = useState<SheetRefusal | null>(null);
  const [focusCount, setFocusCount] = useState(0);
  const size = { rowCount: data.rows.length, columnCount: data.columns.length };
  const context = { size, textAt: (at: CellAt) => cellAt(data.rows, at)?.text ?? '' };

  /** An untouched text is not stored again: it may be an interpolated figure that nobody measured. */
  const stored = (text: string): boolean => {
    const isUntouched = state.editing?.replaces === false && text === context.textAt(state.at);
    const refused = isUntouched ? null : actions.store(state.at, text);
    setRefusal(refused);
    return refused === null;
  };
  const press = (pressed: KeyPress): boolean => {
    // What may have been meant stands as buttons behind the field: Tab leads to them.
    if (pressed.key === 'Tab' && !pressed.isShift && refusal && refusal.meanings.length > 0) return false;
    const step = sheetKey(state, pressed, context);
    if (!step) return false;
    if (step.store !== undefined && !stored(step.store)) return true;
    if (step.store === undefined) setRefusal(null);
    setState(step.state);
    if (step.command) run(step.command, state, actions);
    return true;
  };
  const goTo = (at: CellAt, isExtending = false) => {
    if (state.editing) stored(state.editing.text);
    setState({ ...wentTo(state, at, size, isExtending), runColumn: null });
  };
  const open = (at: CellAt, goesOn: boolean) => {
    if (state.editing) stored(state.editing.text);
    const there = { ...wentTo(state, at, size), runColumn: null };
    setState(opened(there, { text: context.textAt(there.at), replaces: false, goesOn }));
  };
  const leave = () => {
    if (!state.editing) return;
    stored(state.editing.text);
    // Going to another cell took the field away already, and its leaving must not bring one back.
    setState((now) => (now.editing === state.editing ? { ...now, editing: null } : now));
  };
  const focusCell = () => setFocusCount((count) => count + 1);
  const take = (text: string) => {
    setRefusal(actions.store(state.at, text));
    setState({ ...wentTo(state, { ...state.at, row: state.at.row + 1 }, size), runColumn: null });
    focusCell();
  };
  const type = (text: string) => {
    setRefusal(null);
    if (state.editing) setState({ ...state, editing: { ...state.editing, text } });
  };
  return { state, refusal, press, type, goTo, open, leave, take, focusCell, focusCount };
}

function run(command: SheetCommand, state: SheetState, actions: SheetActions): void {
  if (command === 'clear') actions.clear(rangeOf(state));
  if (command === 'fill-down') actions.fillDown(rangeOf(state));
  if (command === 'undo') actions.undo();
  if (command === 'redo') actions.redo();
}
