/**
 * Wire grades: how strong a wire is by its diameter. Published standards' figures, and tables of the user's own for historical or
 * softer wire. A diameter outside a table is unknown; nothing is extrapolated.
 *
 * The figures are the least tensile strength that the standard allows. Wire as delivered is stronger by up to 12 %, an eye, a bend
 * or rust makes it weaker, and it stays bent from two thirds of its strength on (a textbook gives 65 to 75 %).
 */
import type { OwnWireGrade } from './stringingRecords.ts';
import { inchesToMm } from './wireGauge.ts';
import { STEEL_DENSITY, STEEL_YOUNGS_MODULUS, type Standing } from './wireMaterial.ts';

export type WireStrength = { readonly diameterMm: number; readonly tensileStrengthMpa: number };

export type WireGrade = {
  /** Absent in a grade that comes with the program. */
  readonly id?: string;
  /** As a schedule names it. */
  readonly name: string;
  readonly source: string;
  readonly standing: Standing;
  readonly youngsModulusGpa: number;
  readonly densityKgPerM3: number;
  /** Ascending by diameter. */
  readonly rows: readonly WireStrength[];
  readonly isOwn: boolean;
};

export type StrengthReading =
  | { readonly known: true; readonly tensileStrengthMpa: number; readonly gradeName: string }
  | { readonly known: false; readonly reason: 'wire-grade-unknown' | 'diameter-outside-table' };

/** 1 ksi, from the pound-force (definition). */
const MPA_PER_KSI = 6.894757293168;

/** Inches and least ksi. */
const A228_ROWS: readonly (readonly [inches: number, ksi: number])[] = [
  [0.026, 337],
  [0.028, 333],
  [0.03, 330],
  [0.032, 327],
  [0.034, 324],
  [0.036, 321],
  [0.038, 318],
  [0.04, 315],
  [0.042, 313],
  [0.045, 309],
  [0.048, 306],
  [0.051, 303],
  [0.055, 300],
  [0.059, 296],
  [0.063, 293],
  [0.067, 290],
  [0.072, 287],
];

/** Millimetres and least N/mm². */
const EN_SM_ROWS: readonly (readonly [mm: number, mpa: number])[] = [
  [0.6, 2140],
  [0.7, 2090],
  [0.8, 2050],
  [0.9, 2010],
  [1, 1980],
  [1.1, 1950],
  [1.2, 1920],
  [1.3, 1900],
  [1.4, 1870],
  [1.5, 1850],
  [1.6, 1830],
  [1.7, 1810],
  [1.8, 1790],
];

export const PUBLISHED_GRADES: readonly WireGrade[] = [
  {
    name: 'ASTM A228',
    source:
      'ASTM A228, steel wire of music spring quality: least tensile strength, as a wire supplier prints the table',
    standing: 'secondary',
    youngsModulusGpa: STEEL_YOUNGS_MODULUS.value,
    densityKgPerM3: STEEL_DENSITY.value,
    rows: A228_ROWS.map(([inches, ksi]) => ({ diameterMm: inchesToMm(inches), tensileStrengthMpa: ksi * MPA_PER_KSI })),
    isOwn: false,
  },
  {
    name: 'EN 10270-1 SM',
    source:
      'EN 10270-1, patented cold-drawn spring wire, class SM: least tensile strength, as a spring maker prints the table',
    standing: 'secondary',
    youngsModulusGpa: 206,
    densityKgPerM3: STEEL_DENSITY.value,
    rows: EN_SM_ROWS.map(([diameterMm, tensileStrengthMpa]) => ({ diameterMm, tensileStrengthMpa })),
    isOwn: false,
  },
];

export function ownGrade(own: OwnWireGrade): WireGrade {
  return { ...own, standing: 'own', isOwn: true };
}

/**
 * The grade that a schedule's cell means: the user's own tables first, by their whole name; then the published ones, with or
 * without the standard's body and with whatever else is said (`A228`, `astm a228 minimum`, `SM`, `EN 10270-1 class SM`).
 * Undefined for an empty cell or another name: it is not guessed.
 */
export function gradeNamed(name: string | null, ownGrades: readonly WireGrade[] = []): WireGrade | undefined {
  const wanted = plainName(name ?? '');
  if (wanted === '') return undefined;
  const own = ownGrades.find((grade) => plainName(grade.name) === wanted);
  if (own) return own;
  const words = wanted.split(' ');
  const isSm = words.at(-1) === 'sm' && (words.length === 1 || words.includes('10270'));
  return PUBLISHED_GRADES.find(({ name: published }) =>
    published === 'ASTM A228' ? words.includes('a228') || wanted.includes('a 228') : isSm,
  );
}

function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * Straight between the table's rows. The first and last row reach a thousandth of a millimetre farther, for rounded diameters.
 * @throws {RangeError} if the diameter is not a finite number above zero
 * @example tensileStrengthAt(gradeNamed('A228'), 0.8) // { known: true, tensileStrengthMpa: 2259.16…, gradeName: 'ASTM A228' }
 */
export function tensileStrengthAt(grade: WireGrade | undefined, diameterMm: number): StrengthReading {
  if (!(Number.isFinite(diameterMm) && diameterMm > 0))
    throw new RangeError(`diameterMm must be a finite number above zero, got ${diameterMm}`);
  if (!grade) return { known: false, reason: 'wire-grade-unknown' };
  const tensileStrengthMpa = betweenRows(grade.rows, diameterMm);
  return tensileStrengthMpa === undefined
    ? { known: false, reason: 'diameter-outside-table' }
    : { known: true, tensileStrengthMpa, gradeName: grade.name };
}

const ROUNDING_MM = 0.001;

function betweenRows(rows: readonly WireStrength[], diameterMm: number): number | undefined {
  const below = rows.findLast((row) => row.diameterMm <= diameterMm + ROUNDING_MM);
  const above = rows.find((row) => row.diameterMm >= diameterMm - ROUNDING_MM);
  if (!below || !above) return undefined;
  const span = above.diameterMm - below.diameterMm;
  if (span <= 0) return below.tensileStrengthMpa;
  const share = (diameterMm - below.diameterMm) / span;
  return below.tensileStrengthMpa + share * (above.tensileStrengthMpa - below.tensileStrengthMpa);
}

/** What is wrong with a table of the user's own; empty where it can be used. */
export type GradeFault =
  | 'no-name'
  | 'no-source'
  | 'no-rows'
  | 'figure-not-above-zero'
  | 'diameters-not-ascending'
  | 'modulus-implausible'
  | 'density-implausible';

export function gradeFaults(grade: OwnWireGrade): GradeFault[] {
  const { rows, youngsModulusGpa, densityKgPerM3 } = grade;
  const faults: GradeFault[] = [];
  if (grade.name.trim() === '') faults.push('no-name');
  if (grade.source.trim() === '') faults.push('no-source');
  if (rows.length === 0) faults.push('no-rows');
  if (rows.some((row) => !(row.diameterMm > 0 && row.tensileStrengthMpa > 0))) faults.push('figure-not-above-zero');
  if (rows.some((row, index) => index > 0 && row.diameterMm <= (rows[index - 1]?.diameterMm ?? 0)))
    faults.push('diameters-not-ascending');
  if (!(youngsModulusGpa >= 80 && youngsModulusGpa <= 230)) faults.push('modulus-implausible');
  if (!(densityKgPerM3 >= 7000 && densityKgPerM3 <= 9000)) faults.push('density-implausible');
  return faults;
}
