import { expect, it } from 'vitest';
import type { WireGradeId } from '../../../src/piano/ids.ts';
import { draftOf, type GradeDraft, readGrade } from '../../../src/screens/stringing/gradeDraft.ts';

const id = 'g1' as WireGradeId;
const draft: GradeDraft = {
  name: ' Old wire ',
  source: 'Pulled to breaking in the workshop',
  modulus: '195',
  density: '7770',
  rows: '0,7\t1500\n\n1.6 1300\n',
};

it('reads a table with blanks, tabs and decimal commas', () => {
  const read = readGrade(draft, id, []);
  expect(read.isSound ? read.grade : read.faults).toEqual({
    id,
    name: 'Old wire',
    source: 'Pulled to breaking in the workshop',
    youngsModulusGpa: 195,
    densityKgPerM3: 7770,
    rows: [
      { diameterMm: 0.7, tensileStrengthMpa: 1500 },
      { diameterMm: 1.6, tensileStrengthMpa: 1300 },
    ],
  });
  if (read.isSound) expect(readGrade(draftOf(read.grade), id, [])).toEqual(read);
});

it.each([
  [{ name: '' }, 'name'],
  [{ name: 'astm a228' }, 'name'],
  [{ source: ' ' }, 'source'],
  [{ rows: '' }, 'rows'],
  [{ rows: '0.7 1500\n0.7 1400' }, 'rows'],
  [{ rows: '0.7 strong' }, 'rows'],
  [{ modulus: '200000' }, 'modulus'],
  [{ density: 'heavy' }, 'density'],
])('says what is wrong with %j', (change, field) => {
  const read = readGrade({ ...draft, ...change }, id, []);
  expect(read.isSound ? [] : Object.keys(read.faults)).toEqual([field]);
});

it('names the line that cannot be read', () => {
  const read = readGrade({ ...draft, rows: '0.7 1500\n0.8' }, id, []);
  expect(read.isSound ? '' : read.faults.rows).toMatch(/^Line 2: “0\.8”/);
});
