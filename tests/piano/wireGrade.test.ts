import { describe, expect, it } from 'vitest';
import type { WireGradeId } from '../../src/piano/ids.ts';
import { gaugeOfNumber } from '../../src/piano/wireGauge.ts';
import { gradeFaults, gradeNamed, ownGrade, tensileStrengthAt } from '../../src/piano/wireGrade.ts';

const strengthMpa = (name: string, diameterMm: number) => {
  const reading = tensileStrengthAt(gradeNamed(name), diameterMm);
  return reading.known ? reading.tensileStrengthMpa : reading.reason;
};

const IRON = {
  id: 'iron' as WireGradeId,
  name: 'Iron wire, old',
  source: 'measured on three samples',
  youngsModulusGpa: 195,
  densityKgPerM3: 7770,
  rows: [
    { diameterMm: 0.8, tensileStrengthMpa: 1000 },
    { diameterMm: 1.2, tensileStrengthMpa: 900 },
  ],
};

describe('tensileStrengthAt', () => {
  // Least strength by music wire number as tabulated from ASTM A228's inch rows by another hand, to 1 MPa (numbers 13 to 22).
  it.each([
    [13, 2265],
    [14, 2244],
    [15, 2224],
    [16, 2203],
    [17, 2182],
    [18, 2165],
    [19, 2149],
    [20, 2130],
    [21, 2117],
    [22, 2103],
  ])('gives A228 at number %i', (number, wanted) => {
    expect(strengthMpa('A228', gaugeOfNumber('inch', number)?.diameterMm ?? 0)).toBeCloseTo(wanted, -0.3);
  });

  // EN 10270-1, class SM, as printed.
  it.each([
    [0.7, 2090],
    [1, 1980],
    [1.4, 1870],
  ])('gives EN 10270-1 SM at %f mm', (diameterMm, wanted) => {
    expect(strengthMpa('EN 10270-1 SM', diameterMm)).toBe(wanted);
  });

  it('goes straight between rows and nowhere beyond them', () => {
    const grade = ownGrade(IRON);
    expect(tensileStrengthAt(grade, 1)).toMatchObject({ known: true, tensileStrengthMpa: expect.closeTo(950, 9) });
    expect(tensileStrengthAt(grade, 1.21)).toEqual({ known: false, reason: 'diameter-outside-table' });
    expect(strengthMpa('A228', 0.5)).toBe('diameter-outside-table');
  });
});

describe('gradeNamed', () => {
  it.each(['A228', 'astm a228', 'ASTM A-228', 'ASTM A228 minimum', ' A228/A228M '])('understands %s', (name) => {
    expect(gradeNamed(name)?.name).toBe('ASTM A228');
  });
  it.each(['SM', 'EN 10270-1 SM', 'EN10270-1 class SM'.replace('EN10', 'EN 10')])('understands %s', (name) => {
    expect(gradeNamed(name)?.name).toBe('EN 10270-1 SM');
  });
  it.each([null, '', 'piano wire', 'EN 10270-1 SH', 'small', 'iron'])('guesses nothing for %s', (name) => {
    expect(gradeNamed(name)).toBeUndefined();
  });
  it('takes the user’s own table by its name', () => {
    expect(gradeNamed('iron wire (old)', [ownGrade(IRON)])?.rows).toHaveLength(2);
  });
});

it('gradeFaults names what keeps a table from being used', () => {
  expect(gradeFaults(IRON)).toEqual([]);
  const bad = {
    ...IRON,
    name: ' ',
    source: '',
    rows: [...IRON.rows].reverse(),
    youngsModulusGpa: 20,
    densityKgPerM3: 7.8,
  };
  expect(gradeFaults(bad)).toEqual([
    'no-name',
    'no-source',
    'diameters-not-ascending',
    'modulus-implausible',
    'density-implausible',
  ]);
});
