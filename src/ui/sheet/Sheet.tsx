import { type ClipboardEvent, type KeyboardEvent, type MouseEvent, type PointerEvent, useEffect, useRef } from 'react';
import { RowsInSteps } from '../RowsInSteps.tsx';
import { placeOf } from './cellPlace.ts';
import styles from './Sheet.module.css';
import { SheetHead } from './SheetHead.tsx';
import { SheetRowCells } from './SheetRowCells.tsx';
import { copiedText, type SheetActions, type SheetData } from './sheetModel.ts';
import { rangeOf } from './sheetState.ts';
import type { SheetView } from './useSheet.ts';

type SheetProps = { readonly data: SheetData; readonly actions: SheetActions; readonly view: SheetView };

/** Cells to go through and fill from the keyboard, as in a spreadsheet: the standard's grid pattern (WAI-ARIA 1.2). */
export function Sheet({ data, actions, view }: SheetProps) {
  const table = useRef<HTMLTableElement>(null);
  const pointer = useRef('');
  const { state } = view;
  const range = rangeOf(state);
  useFocusFollows(table, view);

  const press = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing || isButtonKey(event)) return;
    const { key, shiftKey, ctrlKey, metaKey, altKey } = event;
    const isTyped = event.getModifierState('AltGraph'); // how many keyboards write @ or a slash
    const pressed = {
      key,
      isShift: shiftKey,
      isControl: (ctrlKey || metaKey) && !isTyped,
      isAlt: altKey && !isTyped,
    };
    if (view.press(pressed)) event.preventDefault();
  };
  const copy = (event: ClipboardEvent) => {
    if (state.editing) return;
    event.clipboardData.setData('text/plain', copiedText(data.rows, range));
    event.preventDefault();
    if (event.type === 'cut') actions.clear(range);
  };
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text/plain');
    if (state.editing && !/[\t\r\n]/.test(text.trim())) return;
    event.preventDefault();
    actions.paste(text, range);
  };
  const point = (event: PointerEvent) => {
    pointer.current = event.pointerType;
    const at = placeOf(event.target);
    if (!at || isOpenCell(event.target) || event.button !== 0 || event.pointerType === 'touch') return;
    view.goTo(at, event.shiftKey);
  };
  /** A finger scrolls as often as it points: only a whole touch opens a cell, and with it the keyboard on the screen. */
  const touch = (event: MouseEvent) => {
    const at = pointer.current === 'touch' ? placeOf(event.target) : null;
    if (at && !isOpenCell(event.target)) view.open(at, true);
  };
  const openByPointer = (event: MouseEvent) => {
    const at = placeOf(event.target);
    if (at && !isOpenCell(event.target)) view.open(at, false);
  };
  const drag = (event: PointerEvent) => {
    const at = event.buttons === 1 && event.pointerType === 'mouse' && !state.editing ? placeOf(event.target) : null;
    if (at && (at.row !== state.at.row || at.column !== state.at.column)) view.goTo(at, true);
  };
  const rowAt = (index: number) => {
    const row = data.rows[index];
    if (!row) return null;
    const isHere = index === state.at.row;
    const isChosen = index >= range.fromRow && index <= range.toRow;
    return (
      <SheetRowCells
        key={row.key}
        row={row}
        rowIndex={index}
        columns={data.columns}
        atColumn={isHere ? state.at.column : -1}
        fromColumn={isChosen ? range.fromColumn : -1}
        toColumn={isChosen ? range.toColumn : -1}
        editing={isHere ? state.editing : null}
        view={isHere && state.editing ? view : null}
      />
    );
  };
  return (
    <div className={styles.frame}>
      <table
        ref={table}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a grid is a table whose cells are gone through with keys
        role="grid"
        className={styles.sheet}
        aria-label={data.label}
        aria-rowcount={data.rows.length + 1}
        aria-colcount={data.columns.length + 1}
        aria-multiselectable="true"
        onKeyDown={press}
        onCopy={copy}
        onCut={copy}
        onPaste={paste}
        onPointerDown={point}
        onPointerOver={drag}
        onClick={touch}
        onDoubleClick={openByPointer}
      >
        <SheetHead data={data} />
        <tbody>
          <RowsInSteps rowCount={data.rows.length} rowAt={rowAt} />
        </tbody>
      </table>
    </div>
  );
}

/** While the sheet has the focus, or is given it, it stands on the cell where one is. */
function useFocusFollows(table: { readonly current: HTMLTableElement | null }, view: SheetView): void {
  const { row, column } = view.state.at;
  const isEditing = view.state.editing !== null;
  const last = useRef({ isEditing, focusCount: view.focusCount });
  useEffect(() => {
    const before = last.current;
    last.current = { isEditing, focusCount: view.focusCount };
    const holdsFocus = table.current?.contains(document.activeElement) ?? false;
    // The field that was typed into is gone by now, and the focus with it.
    const lostIt = before.isEditing && document.activeElement === document.body;
    const isAsked = before.focusCount !== view.focusCount;
    if (isEditing || !(holdsFocus || lostIt || isAsked)) return;
    table.current?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`)?.focus();
  }, [table, row, column, isEditing, view.focusCount]);
}

/** In the field itself, or in what is said below it. */
function isOpenCell(target: EventTarget): boolean {
  return target instanceof Element && target.closest('[data-open]') !== null;
}

/** A button's own keys; Escape leaves the cell from there too. */
function isButtonKey({ target, key }: KeyboardEvent): boolean {
  return target instanceof HTMLButtonElement && key !== 'Escape';
}
