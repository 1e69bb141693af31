import { describe, expect, it } from 'vitest';
import { COMPASS_88 } from '../../../src/piano/compass.ts';
import { parsePastedCells } from '../../../src/stringing/schedule/pastedCells.ts';
import { emptySchedule } from '../../../src/stringing/schedule/scheduleRows.ts';

const rows = emptySchedule(COMPASS_88);
const anchor = { midi: 60, field: 'speakingLengthMm' } as const;

describe('parsePastedCells', () => {
  it('reads a spreadsheet’s block with decimal commas from the chosen cell on', () => {
    expect(parsePastedCells('640,5\t1,05\r\n612\t1,025\r\n', rows, anchor)).toEqual({
      edits: [
        { midi: 60, change: { speakingLengthMm: 640.5, wireDiameterMm: 1.05 } },
        { midi: 61, change: { speakingLengthMm: 612, wireDiameterMm: 1.025 } },
      ],
      complaints: [],
      hasHeader: false,
      unknownColumns: [],
    });
  });

  it('places columns by a header, in any order, and tells those that it does not know', () => {
    const text = 'Wire grade;Note;Weight;Speaking length (mm)\nA228;C#4;3;600,2\nA228;D4;3;580';
    const pasted = parsePastedCells(text, rows, anchor);
    expect(pasted).toMatchObject({ hasHeader: true, unknownColumns: ['Weight'], complaints: [] });
    expect(pasted.edits).toEqual([
      { midi: 61, change: { wireGrade: 'A228', speakingLengthMm: 600.2 } },
      { midi: 62, change: { wireGrade: 'A228', speakingLengthMm: 580 } },
    ]);
  });

  it('places lines by a first column of note names', () => {
    const { edits } = parsePastedCells('A0\t1380\nC8\t52', rows, anchor);
    expect(edits.map(({ midi }) => midi)).toEqual([21, 108]);
  });

  it.each([
    ['a column of decimal commas', '640,5\n612,0', [{ speakingLengthMm: 640.5 }, { speakingLengthMm: 612 }]],
    [
      'a list parted by commas',
      '640.5,1.05\n612.0,1.025',
      [
        { speakingLengthMm: 640.5, wireDiameterMm: 1.05 },
        { speakingLengthMm: 612, wireDiameterMm: 1.025 },
      ],
    ],
    ['units and empty cells', '640 mm\t\n\n', [{ speakingLengthMm: 640, wireDiameterMm: null }]],
  ])('reads %s', (_, text, changes) => {
    expect(parsePastedCells(text, rows, anchor).edits.map(({ change }) => change)).toEqual(changes);
  });

  it('tells what it cannot read, by line, cell, note and field, and takes the rest', () => {
    const pasted = parsePastedCells('640\t13½\nabout 6\t1,0\n6000\t13\n610\t0.031', rows, anchor);
    expect(
      pasted.complaints.map(({ line, cell, midi, field, problem }) => [line, cell, midi, field, problem.kind]),
    ).toEqual([
      [1, 2, 60, 'wireDiameterMm', 'not-a-number'],
      [2, 1, 61, 'speakingLengthMm', 'not-a-number'],
      [3, 1, 62, 'speakingLengthMm', 'out-of-range'],
      [3, 2, 62, 'wireDiameterMm', 'gauge-number'],
      [4, 2, 63, 'wireDiameterMm', 'inches'],
    ]);
    expect(pasted.edits).toEqual([
      { midi: 60, change: { speakingLengthMm: 640 } },
      { midi: 61, change: { wireDiameterMm: 1 } },
      { midi: 63, change: { speakingLengthMm: 610 } },
    ]);
  });

  it('counts the lines of what was pasted, its header among them', () => {
    const { complaints } = parsePastedCells('note\tlength\nC4\tlong', rows, anchor);
    expect(complaints).toMatchObject([{ line: 2, cell: 2, midi: 60 }]);
  });

  it('takes nothing outside the compass or beyond the last column', () => {
    const over = parsePastedCells('53\n52\n51', rows, { midi: 107, field: 'speakingLengthMm' });
    expect(over.edits.map(({ midi }) => midi)).toEqual([107, 108]);
    expect(over.complaints).toMatchObject([{ line: 3, problem: { kind: 'outside-schedule' } }]);
    const wide = parsePastedCells('A228\tlong\tmore', rows, { midi: 60, field: 'wireGrade' });
    expect(wide.complaints).toMatchObject([{ cell: 3, problem: { kind: 'outside-schedule', text: 'more' } }]);
  });
});
