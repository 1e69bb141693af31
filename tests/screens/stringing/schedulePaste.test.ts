import { expect, it } from 'vitest';
import { clearedRange, filledRange } from '../../../src/screens/stringing/rangeFields.ts';
import { anchorOf, cellCount, isWhole, readPaste, spreadPaste } from '../../../src/screens/stringing/schedulePaste.ts';
import { pasteComplaintLine } from '../../../src/screens/stringing/sheetWords.ts';
import { emptySchedule } from '../../../src/stringing/schedule/scheduleRows.ts';

const rows = emptySchedule({ lowestMidi: 60, highestMidi: 63 });
const range = { fromRow: 1, toRow: 2, fromColumn: 1, toColumn: 2 };
const anchor = anchorOf(rows, range);

it('begins at the chosen cell', () => {
  expect(anchor).toEqual({ midi: 61, field: 'speakingLengthMm' });
  const pasted = readPaste(rows, '600,5\t1\n580\t1', anchor, 'ask');
  expect(pasted.edits).toEqual([
    { midi: 61, change: { speakingLengthMm: 600.5, wireDiameterMm: 1 } },
    { midi: 62, change: { speakingLengthMm: 580, wireDiameterMm: 1 } },
  ]);
  expect(cellCount(pasted)).toBe(4);
  expect(isWhole(pasted)).toBe(true);
});

it('is not whole where a cell cannot be read or a column is left out', () => {
  const odd = readPaste(rows, '600\tthick', anchor, 'ask');
  expect(isWhole(odd)).toBe(false);
  expect(odd.complaints.map(pasteComplaintLine)).toEqual([
    expect.stringMatching(/^Line 1, cell 2: C♯4, Wire: “thick” is no number/),
  ]);
  expect(isWhole(readPaste(rows, 'note\tspeaking length\tcolour\nC4\t600\tred', anchor, 'ask'))).toBe(false);
  expect(isWhole(readPaste(rows, '', anchor, 'ask'))).toBe(false);
});

it('takes sizes’ numbers as this device takes typed ones', () => {
  expect(readPaste(rows, '600\t17', anchor, 'ask').complaints).toHaveLength(1);
  const pasted = readPaste(rows, '600\t17', anchor, 'metric');
  expect(pasted.complaints).toEqual([]);
  expect(pasted.edits).toContainEqual({ midi: 61, change: { wireDiameterMm: 0.975 } });
});

it('puts one value into every chosen cell, and only where it fits all of them', () => {
  const grades = { fromRow: 0, toRow: 3, fromColumn: 5, toColumn: 5 };
  expect(spreadPaste(rows, 'A228', grades, 'ask')?.map(({ wireGrade }) => wireGrade)).toEqual(Array(4).fill('A228'));
  expect(spreadPaste(rows, 'A228', range, 'ask')).toBeNull();
  expect(spreadPaste(rows, '1\t2', grades, 'ask')).toBeNull();
});

it('fills the chosen cells from their first row, and a single one from the row above', () => {
  const [first, ...others] = rows;
  const begun = first ? [{ ...first, stringCount: 3 }, ...others] : rows;
  const column = { fromColumn: 0, toColumn: 0 };
  expect(filledRange(begun, { fromRow: 0, toRow: 2, ...column }).map((row) => row.stringCount)).toEqual([
    3,
    3,
    3,
    null,
  ]);
  expect(filledRange(begun, { fromRow: 1, toRow: 1, ...column }).map((row) => row.stringCount)).toEqual([
    3,
    3,
    null,
    null,
  ]);
  expect(clearedRange(begun, { fromRow: 0, toRow: 0, ...column })[0]?.stringCount).toBeNull();
});
