import { describe, expect, it } from 'vitest';
import { cellAt, cellOutline, hasRoom, noteMapLayout, rowLabelStep } from '../../../src/ui/charts/noteMapLayout.ts';

describe('the map of notes and visits', () => {
  const layout = noteMapLayout(960, 88, 22);

  it('gives the cell under the middle of each cell', () => {
    for (const [column, row] of [
      [0, 0],
      [87, 21],
      [40, 7],
    ] as const) {
      const x = layout.left + (column + 0.5) * layout.cellWidth;
      const y = layout.top + (row + 0.5) * layout.cellHeight;
      expect(cellAt(layout, x, y, 88, 22)).toEqual({ column, row });
    }
  });

  it('gives the nearest column and no row beside the cells', () => {
    expect(cellAt(layout, 2, 2, 88, 22)).toEqual({ column: 0, row: -1 });
    expect(cellAt(layout, 5000, 5000, 88, 22)).toEqual({ column: 87, row: -1 });
    expect(cellAt(layout, 100, 100, 0, 0)).toBeNull();
  });

  it('uses the whole width and stays within a screen, with dates that do not run into each other', () => {
    expect(layout.left + 88 * layout.cellWidth).toBeLessThanOrEqual(960);
    const many = noteMapLayout(390, 88, 60);
    expect(many.height).toBeLessThan(700);
    expect(rowLabelStep(many) * many.cellHeight).toBeGreaterThanOrEqual(16);
  });

  it('leaves out the names of notes that would run into the one before', () => {
    expect([0, 3, 15].map((index) => hasRoom([0, 3, 15], index, 3))).toEqual([true, false, true]);
    expect([0, 3, 15].map((index) => hasRoom([0, 3, 15], index, 10))).toEqual([true, true, true]);
  });

  it('outlines every cell of a class once, and nothing where nothing was measured', () => {
    const levels = [
      [1, 0],
      [null, 1],
    ];
    const small = { left: 10, top: 20, cellWidth: 5, cellHeight: 8, width: 0, height: 0 };
    expect(cellOutline(small, levels, 1)).toBe('M10.00 20.00h5.00v8h-5.00zM15.00 28.00h5.00v8h-5.00z');
    expect(cellOutline(small, levels, -2)).toBe('');
  });
});
