/** The form of a wire table of one's own, as it is typed and as it is read. */
import type { WireGradeId } from '../../piano/ids.ts';
import type { OwnWireGrade } from '../../piano/stringingRecords.ts';
import { type GradeFault, gradeFaults, PUBLISHED_GRADES } from '../../piano/wireGrade.ts';
import { numberIn } from '../../piano/wireScheduleCell.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.grades.form;

export type GradeDraft = {
  readonly name: string;
  readonly source: string;
  readonly modulus: string;
  readonly density: string;
  /** A line each: diameter and strength. */
  readonly rows: string;
};

export type GradeFaults = { readonly [Field in keyof GradeDraft]?: string };
export type ReadGrade =
  | { readonly isSound: true; readonly grade: OwnWireGrade }
  | { readonly isSound: false; readonly faults: GradeFaults };

export function draftOf(grade: OwnWireGrade | null): GradeDraft {
  if (!grade) return { name: '', source: '', modulus: '200', density: '7850', rows: '' };
  return {
    name: grade.name,
    source: grade.source,
    modulus: String(grade.youngsModulusGpa),
    density: String(grade.densityKgPerM3),
    rows: grade.rows.map(({ diameterMm, tensileStrengthMpa }) => `${diameterMm}\t${tensileStrengthMpa}`).join('\n'),
  };
}

/** @param others the other tables of one's own: a name means one table only */
export function readGrade(draft: GradeDraft, id: WireGradeId, others: readonly OwnWireGrade[]): ReadGrade {
  const rows = readRows(draft.rows);
  if (typeof rows === 'string') return { isSound: false, faults: { rows } };
  const grade: OwnWireGrade = {
    id,
    name: draft.name.trim(),
    source: draft.source.trim(),
    youngsModulusGpa: numberIn(draft.modulus) ?? 0,
    densityKgPerM3: numberIn(draft.density) ?? 0,
    rows,
  };
  const faults: GradeFaults = Object.fromEntries(
    gradeFaults(grade).map((fault) => [FIELDS[fault], words.faults[fault]]),
  );
  const taken = isTaken(grade.name, others) ? { name: words.nameTaken } : {};
  const all = { ...faults, ...taken };
  return Object.keys(all).length > 0 ? { isSound: false, faults: all } : { isSound: true, grade };
}

const FIELDS: Readonly<Record<GradeFault, keyof GradeDraft>> = {
  'no-name': 'name',
  'no-source': 'source',
  'no-rows': 'rows',
  'figure-not-above-zero': 'rows',
  'diameters-not-ascending': 'rows',
  'modulus-implausible': 'modulus',
  'density-implausible': 'density',
};

function isTaken(name: string, others: readonly OwnWireGrade[]): boolean {
  const plain = name.toLowerCase();
  return [...others, ...PUBLISHED_GRADES].some((other) => other.name.toLowerCase() === plain);
}

/** Rows, or what is wrong with a line. */
function readRows(text: string): OwnWireGrade['rows'] | string {
  const rows: OwnWireGrade['rows'][number][] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    const [diameterMm, tensileStrengthMpa, ...rest] = line
      .trim()
      .split(/[\s;]+/)
      .map(numberIn);
    if (diameterMm === undefined || tensileStrengthMpa === undefined || rest.length > 0)
      return words.rowFault(index + 1, line.trim());
    rows.push({ diameterMm, tensileStrengthMpa });
  }
  return rows;
}
