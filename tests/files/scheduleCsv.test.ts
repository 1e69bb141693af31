import { describe, expect, it } from 'vitest';
import { readScheduleCsv, writeScheduleCsv } from '../../src/files/scheduleCsv.ts';

const HEADER = 'note,strings,speaking_length_mm,wire_diameter_mm,core_diameter_mm,wrap,wire_grade';

describe('readScheduleCsv', () => {
  it('reads plain and wound rows in any order and hands them back from the lowest up', () => {
    const read = readScheduleCsv(`${HEADER}\nA4,3,400,1.0,,,ASTM A228\nA0,1,1380,5.2,1.5,Copper,\n`);
    expect(read).toMatchObject({
      ok: true,
      rows: [
        { midi: 21, stringCount: 1, coreDiameterMm: 1.5, wrap: 'copper', wireGrade: null },
        { midi: 69, speakingLengthMm: 400, coreDiameterMm: null, wrap: null, wireGrade: 'ASTM A228', bridge: null },
      ],
    });
  });

  it('reads semicolons with decimal commas, and what is not measured as null', () => {
    const text = `${HEADER.replaceAll(',', ';')}\nA4;3;400,5;;;;\n`;
    expect(readScheduleCsv(text)).toMatchObject({
      ok: true,
      rows: [{ speakingLengthMm: 400.5, wireDiameterMm: null }],
    });
  });

  it.each([
    ['A4,3,400,x,,,', /line 2: A4: wire_diameter_mm has to be a number or empty, got "x"/],
    ['H4,3,400,1,,,', /line 2: note has to be a name.*"H4"/],
    ['A4,7,400,1,,,', /line 2: A4: strings has to be from 1 to 4, got "7"/],
    ['A4,1.5,400,1,,,', /strings has to be a whole number/],
    ['A4,3,4,1,,,', /speaking_length_mm has to be from 20 to 3000, got "4"/],
    [
      'A4,3,400,13.5,,,',
      /wire_diameter_mm has to be in millimetres.*0\.800 mm \(metric series\) or 0\.813 mm \(inch series\)/,
    ],
    ['A4,3,400,0.037,,,', /in millimetres.*0\.940 mm/],
    ['A4,3,400,2,2,copper,', /core_diameter_mm has to be below wire_diameter_mm/],
    ['A4,3,400,2,1,,', /wrap is empty and core_diameter_mm is 1/],
    ['A4,3,400,2,,copper,', /core_diameter_mm is empty and wrap is copper/],
    ['A4,3,400,2,1,tin,', /wrap has to be copper, iron, brass or empty, got "tin"/],
    ['A4,3,400,1,,,\nA4,3,400,1,,,', /line 3: A4 stands in line 2 already/],
    ['A4,3,400', /line 2: 3 cells where the header names 7/],
    ['', /holds no note/],
  ])('refuses %s and says where', (row, says) => {
    const read = readScheduleCsv(`${HEADER}\n${row}\n`);
    expect(read.ok ? '' : read.message).toMatch(says);
  });

  it('names a missing column', () => {
    const read = readScheduleCsv('note,strings\nA4,3\n');
    expect(read.ok ? '' : read.message).toMatch(/speaking_length_mm, wire_diameter_mm is missing/);
  });
});

it('writes what it reads back, marks of interpolation and text with commas too', () => {
  const text = `${HEADER},bridge,interpolated\nA0,1,1380,5.2,1.5,copper,"old, soft",bass,\nA4,3,400.2,,,,,,speaking_length_mm strings\n`;
  const read = readScheduleCsv(text);
  const rows = read.ok ? read.rows : [];
  expect(rows.map(({ interpolated }) => interpolated)).toEqual([[], ['speakingLengthMm', 'stringCount']]);
  const again = readScheduleCsv(writeScheduleCsv(rows));
  expect(again).toEqual({
    ok: true,
    rows: rows.map((row) => ({ ...row, interpolated: [...row.interpolated].sort().reverse() })),
  });
});
