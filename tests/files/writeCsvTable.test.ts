import { expect, it } from 'vitest';
import { readCsvTable, writeCsvTable } from '../../src/files/csvTable.ts';

it('a sheet written is read back as it was', () => {
  const sheet = {
    columns: ['note', 'drift_cents', 'remark'],
    rows: [
      ['F#3', -1.25, 'left, "centre"\nnext line'],
      ['A4', null, ''],
    ],
  };
  const table = readCsvTable(writeCsvTable(sheet), sheet.columns);
  expect(table.ok && table.rows.map((row) => row.cells)).toEqual([
    { note: 'F#3', drift_cents: '-1.25', remark: 'left, "centre"\nnext line' },
    { note: 'A4', drift_cents: '', remark: '' },
  ]);
});

it('numbers lose the dust of binary fractions and nothing that was measured', () => {
  expect(writeCsvTable({ columns: ['a_hz'], rows: [[0.1 + 0.2], [219.871234567], [1e-7]] })).toBe(
    'a_hz\r\n0.3\r\n219.871235\r\n1e-7\r\n',
  );
});
