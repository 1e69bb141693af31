import { describe, expect, it } from 'vitest';
import { isIsoDate, numberCell, readCsvTable } from '../../src/files/csvTable.ts';

function rowsOf(text: string, columns = ['note', 'cents']) {
  const table = readCsvTable(text, columns);
  if (!table.ok) throw new Error(table.message);
  return table.rows;
}

function complaintOf(text: string, columns = ['note', 'cents']) {
  const table = readCsvTable(text, columns);
  return table.ok ? undefined : table.message;
}

describe('readCsvTable', () => {
  it.each([
    ['commas', 'note,cents\nA4,1.5\n'],
    ['semicolons', 'note;cents\nA4;1.5\n'],
    ['tabs', 'note\tcents\nA4\t1.5\n'],
    ['line ends of other systems', 'note,cents\r\nA4,1.5\r\n'],
    ['a byte order mark', '\uFEFFnote,cents\nA4,1.5\n'],
    ['capitals and blanks in the header', ' Note , CENTS\nA4, 1.5 \n'],
    ['quoted cells', '"note","cents"\n"A4","1.5"\n'],
    ['columns in another order', 'cents,note\n1.5,A4\n'],
    ['columns of no concern', 'note,weather,cents\nA4,"rain, wind",1.5\n'],
  ])('reads %s', (_, text) => {
    expect(rowsOf(text).map(({ cells }) => [cells.note, cells.cents])).toEqual([['A4', '1.5']]);
  });

  it('counts lines as an editor does, blank ones too', () => {
    expect(rowsOf('note,cents\nA4,1\n\nB4,2\n').map(({ line }) => line)).toEqual([2, 4]);
  });

  it.each([
    ['an empty file', '', /is empty.*note,cents/],
    ['a missing column', 'note\nA4\n', /line 1.*cents.*missing/],
    ['a column twice', 'note,cents,note\n', /line 1.*note.*twice/],
    ['too few cells', 'note,cents\nA4,1\nB4\n', /line 3.*1 cells/],
    ['an open quotation mark', 'note,cents\n"A4,1\n', /line 2.*quotation mark/],
  ])('complains of %s', (_, text, says) => {
    expect(complaintOf(text)).toMatch(says);
  });
});

it.each([
  ['', null],
  ['1.5', 1.5],
  ['-.5', -0.5],
  ['2e-3', 0.002],
  ['1,5', undefined],
  ['Infinity', undefined],
  ['0x10', undefined],
  ['1.5 cents', undefined],
])('numberCell makes of "%s" %s', (text, value) => {
  expect(numberCell(text)).toBe(value);
});

it.each([
  ['2020-02-29', true],
  ['2021-02-29', false],
  ['2021-13-01', false],
  ['21-01-01', false],
  ['2021-1-1', false],
  ['01.02.2021', false],
])('isIsoDate of "%s" is %s', (text, is) => {
  expect(isIsoDate(text)).toBe(is);
});
