import type { CellAt } from './sheetState.ts';

/** The cell that an event happened in; null for the sheet's head and edges. */
export function placeOf(target: EventTarget): CellAt | null {
  const cell = target instanceof Element ? target.closest<HTMLElement>('[data-row][data-column]') : null;
  return cell ? { row: Number(cell.dataset.row), column: Number(cell.dataset.column) } : null;
}
