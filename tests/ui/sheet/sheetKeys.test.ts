import { describe, expect, it } from 'vitest';
import { type KeyPress, sheetKey } from '../../../src/ui/sheet/sheetKeys.ts';
import { FIRST_STATE, opened, rangeOf, type SheetState } from '../../../src/ui/sheet/sheetState.ts';

const size = { rowCount: 3, columnCount: 4 };
const context = { size, textAt: ({ row, column }: { row: number; column: number }) => `${row}/${column}` };

function press(state: SheetState, key: string, modifiers: Partial<KeyPress> = {}) {
  return sheetKey(state, { key, isShift: false, isControl: false, isAlt: false, ...modifiers }, context);
}

const at = (row: number, column: number): SheetState => ({
  ...FIRST_STATE,
  at: { row, column },
  anchor: { row, column },
});
const typed = (state: SheetState, text: string) => opened(state, { text, replaces: true, goesOn: false });

describe('between cells', () => {
  it.each([
    ['ArrowDown', {}, { row: 2, column: 1 }],
    ['ArrowRight', {}, { row: 1, column: 2 }],
    ['Home', {}, { row: 1, column: 0 }],
    ['End', {}, { row: 1, column: 3 }],
    ['PageDown', {}, { row: 2, column: 1 }],
    ['Home', { isControl: true }, { row: 0, column: 0 }],
    ['End', { isControl: true }, { row: 2, column: 3 }],
    ['ArrowUp', { isControl: true }, { row: 0, column: 1 }],
    ['Enter', {}, { row: 2, column: 1 }],
    ['Enter', { isShift: true }, { row: 0, column: 1 }],
  ] as const)('%s with %j moves', (key, modifiers, wanted) => {
    const step = press(at(1, 1), key, modifiers);
    expect(step?.state.at).toEqual(wanted);
    expect(step?.store).toBeUndefined();
  });

  it('stays inside at the edges', () => {
    expect(press(at(0, 0), 'ArrowUp')?.state.at).toEqual({ row: 0, column: 0 });
    expect(press(at(2, 3), 'ArrowRight')?.state.at).toEqual({ row: 2, column: 3 });
    expect(press(at(2, 3), 'Enter')?.state.at).toEqual({ row: 2, column: 3 });
  });

  it('chooses more cells with Shift, and one again without', () => {
    const two = press(at(1, 1), 'ArrowDown', { isShift: true })?.state ?? FIRST_STATE;
    const four = press(two, 'ArrowRight', { isShift: true })?.state ?? FIRST_STATE;
    expect(rangeOf(four)).toEqual({ fromRow: 1, toRow: 2, fromColumn: 1, toColumn: 2 });
    const one = press(four, 'ArrowLeft')?.state ?? FIRST_STATE;
    expect(rangeOf(one)).toEqual({ fromRow: 2, toRow: 2, fromColumn: 1, toColumn: 1 });
  });

  it('opens a cell with what is typed in place of what stood there, and with F2 as it stands', () => {
    expect(press(at(1, 1), '7')?.state.editing).toEqual({ text: '7', replaces: true, goesOn: false });
    expect(press(at(1, 1), 'F2')?.state.editing).toEqual({ text: '1/1', replaces: false, goesOn: false });
  });

  it.each([
    ['z', {}, 'undo'],
    ['y', {}, 'redo'],
    ['Z', { isShift: true }, 'redo'],
    ['d', {}, 'fill-down'],
  ] as const)('Control and %s with %j asks for %s', (key, modifiers, command) => {
    expect(press(at(1, 1), key, { isControl: true, ...modifiers })?.command).toBe(command);
  });

  it('empties with Delete and with Backspace', () => {
    expect(press(at(1, 1), 'Delete')?.command).toBe('clear');
    expect(press(at(1, 1), 'Backspace')?.command).toBe('clear');
  });

  it('leaves to the browser what is its own', () => {
    expect(press(at(1, 1), 'Tab')).toBeNull();
    expect(press(at(1, 1), 'F5')).toBeNull();
    expect(press(at(1, 1), 'c', { isControl: true })).toBeNull();
    expect(press(at(1, 1), 'v', { isControl: true })).toBeNull();
    expect(press(at(1, 1), 'ArrowLeft', { isAlt: true })).toBeNull();
  });
});

describe('in an open cell', () => {
  it('stores with Enter and goes down, and gives up with Escape', () => {
    expect(press(typed(at(1, 1), '412'), 'Enter')).toMatchObject({
      store: '412',
      state: { at: { row: 2, column: 1 } },
    });
    const given = press(typed(at(1, 1), '412'), 'Escape');
    expect(given?.store).toBeUndefined();
    expect(given?.state).toMatchObject({ at: { row: 1, column: 1 }, editing: null });
  });

  it('leaves by arrows what was typed anew, and moves inside what is being changed', () => {
    expect(press(typed(at(1, 1), '412'), 'ArrowRight')).toMatchObject({ store: '412', state: { at: { column: 2 } } });
    const changed = opened(at(1, 1), { text: '412', replaces: false, goesOn: false });
    expect(press(changed, 'ArrowRight')).toBeNull();
  });

  it('leaves undo and copy to the field', () => {
    expect(press(typed(at(1, 1), '4'), 'z', { isControl: true })).toBeNull();
    expect(press(typed(at(1, 1), '4'), 'c', { isControl: true })).toBeNull();
  });

  it('stores a run of entries with Tab, and goes on below its first cell with Enter', () => {
    const first = press(typed(at(0, 1), '3'), 'Tab')?.state ?? FIRST_STATE;
    expect(first).toMatchObject({ at: { row: 0, column: 2 }, runColumn: 1 });
    const passed = press(first, 'Tab')?.state ?? FIRST_STATE;
    expect(passed.at).toEqual({ row: 0, column: 3 });
    expect(press(typed(passed, '5'), 'Enter')).toMatchObject({ store: '5', state: { at: { row: 1, column: 1 } } });
  });

  it('leaves the sheet with Tab once a run has ended', () => {
    const run = press(typed(at(0, 1), '3'), 'Tab')?.state ?? FIRST_STATE;
    const moved = press(run, 'ArrowDown')?.state ?? FIRST_STATE;
    expect(press(moved, 'Tab')).toBeNull();
    const escaped = press(run, 'Escape')?.state ?? FIRST_STATE;
    expect(press(escaped, 'Tab')).toBeNull();
  });

  it('goes from the end of a row to the next row’s beginning, and out at the end of all', () => {
    expect(press(typed(at(0, 3), '3'), 'Tab')?.state).toMatchObject({ at: { row: 1, column: 0 }, runColumn: 0 });
    expect(press(typed(at(2, 3), '3'), 'Tab')).toBeNull();
  });

  it('opens the next cell too where a finger opened this one', () => {
    const byTouch = opened(at(0, 1), { text: '5', replaces: false, goesOn: true });
    expect(press(byTouch, 'Enter')?.state.editing).toEqual({ text: '1/1', replaces: false, goesOn: true });
  });
});
