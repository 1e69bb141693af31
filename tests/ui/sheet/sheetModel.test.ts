import { expect, it } from 'vitest';
import { copiedText, type SheetRow } from '../../../src/ui/sheet/sheetModel.ts';

const row = (key: string, texts: readonly string[]): SheetRow => ({
  key,
  name: key,
  cells: texts.map((text) => ({ text, isInterpolated: false, complaint: null })),
});

it('copies a range as a spreadsheet takes it', () => {
  const rows = [row('A0', ['1', '1385', '5.6']), row('B0', ['1', '1353', '']), row('C1', ['2', '1', '1'])];
  expect(copiedText(rows, { fromRow: 0, toRow: 1, fromColumn: 1, toColumn: 2 })).toBe('1385\t5.6\r\n1353\t');
});
