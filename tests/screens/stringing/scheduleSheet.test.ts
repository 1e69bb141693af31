import { describe, expect, it } from 'vitest';
import { namedSize } from '../../../src/screens/stringing/gaugeTyping.ts';
import { completed, sheetColumns, sheetRows, typedCell } from '../../../src/screens/stringing/scheduleSheet.ts';
import { complaintLine } from '../../../src/screens/stringing/sheetWords.ts';
import { checkSchedule } from '../../../src/stringing/schedule/checkSchedule.ts';
import { emptyRow } from '../../../src/stringing/schedule/scheduleRows.ts';

const plain = (text = '') => text.replace(/[\u00a0\u2009]/g, ' ');
const C4 = 60;

describe('a cell of the sheet', () => {
  it('shows a plain wire’s size, and of a wound string the core’s alone', () => {
    const rows = [
      { ...emptyRow(40), wireDiameterMm: 3.65, coreDiameterMm: 1.2, wrap: 'copper' as const },
      { ...emptyRow(C4), wireDiameterMm: 1 },
    ];
    const [wound, treble] = sheetRows(rows, []);
    expect(wound?.cells.map(({ beside }) => plain(beside))).toEqual([
      '',
      '',
      '0.1437 in',
      'metric 21½ · 0.0472 in',
      '',
      '',
      '',
    ]);
    expect(plain(treble?.cells[2]?.beside)).toBe('metric 17½ · 0.0394 in');
  });

  it('says what was interpolated and what does not fit', () => {
    const rows = [
      { ...emptyRow(C4), speakingLengthMm: 600 },
      { ...emptyRow(C4 + 1), speakingLengthMm: 610, interpolated: ['speakingLengthMm'] },
    ];
    const complaints = checkSchedule(rows);
    const [, second] = sheetRows(rows, complaints);
    expect(second?.cells[1]).toMatchObject({ isInterpolated: true, complaint: { severity: 'look' } });
    expect(complaints.map(complaintLine)).toEqual([
      'C♯4, Speaking length: longer than the note below it in its section',
    ]);
  });

  it('brings up a keyboard of figures for figures', () => {
    const columns = sheetColumns(['ASTM A228']);
    expect(columns.map(({ inputMode }) => inputMode)).toEqual([
      'numeric',
      'decimal',
      'decimal',
      'decimal',
      'text',
      'text',
      'text',
    ]);
    expect(columns[5]?.offers).toEqual(['ASTM A228']);
  });
});

describe('what is typed', () => {
  it('is taken with a decimal comma', () => {
    expect(typedCell(C4, 'speakingLengthMm', '412,5', 'ask')).toEqual({
      isTaken: true,
      edit: { midi: C4, change: { speakingLengthMm: 412.5 } },
    });
  });

  it('may be the beginning of a word', () => {
    expect(completed('C', ['copper', 'iron', 'brass'])).toBe('copper');
    expect(completed('tin', ['copper', 'iron', 'brass'])).toBe('tin');
    expect(typedCell(C4, 'bridge', 'l', 'ask')).toMatchObject({ edit: { change: { bridge: 'long' } } });
  });

  it.each([
    ['17 inch', '0.9906'],
    ['17i', '0.9906'],
    ['13½ metric', '0.8'],
    ['13,5 m', '0.8'],
    ['13 1/2 m', '0.8'],
    ['0.039 in', '0.9906'],
    ['0.975 mm', '0.975 mm'],
    ['40 inch', '40 inch'],
    ['0.975', '0.975'],
  ])('%s means %s mm', (text, wanted) => {
    expect(namedSize(text)).toBe(wanted);
  });

  it('as a size’s number is asked about, or taken as this device takes it', () => {
    const asked = typedCell(C4, 'wireDiameterMm', '17', 'ask');
    expect(asked.isTaken).toBe(false);
    expect(asked.isTaken ? [] : asked.refusal.meanings.map(({ text }) => text)).toEqual(['0.975', '0.9906']);
    expect(typedCell(C4, 'wireDiameterMm', '17', 'inch')).toMatchObject({
      edit: { change: { wireDiameterMm: 0.9906 } },
    });
    expect(typedCell(C4, 'wireDiameterMm', '17', 'metric')).toMatchObject({
      edit: { change: { wireDiameterMm: 0.975 } },
    });
  });

  it('is refused with its note, its column and the reason', () => {
    const typed = typedCell(C4, 'stringCount', 'three', 'ask');
    expect(typed.isTaken ? '' : typed.refusal.message).toMatch(/^C4, Strings: “three” is no number/);
  });
});
