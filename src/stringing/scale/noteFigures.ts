/** Tension, stress, share of breaking and expected inharmonicity of one note of a schedule. What cannot be known is null. */
import { midiToHz } from '../../piano/note.ts';
import type { ScheduleRow, WrapMetal } from '../../piano/stringingRecords.ts';
import { gradeNamed, type StrengthReading, tensileStrengthAt, type WireGrade } from '../../piano/wireGrade.ts';
import { STEEL_DENSITY, STEEL_YOUNGS_MODULUS } from '../../piano/wireMaterial.ts';
import type { ScheduleField } from '../../piano/wireScheduleCell.ts';
import { predictedB } from '../predictedB.ts';
import { isWound } from '../schedule/scheduleRows.ts';
import { loadOfMass, type StringLoad } from '../stringLoad.ts';
import { massPerLength } from '../woundString.ts';

export type NoteFigures = {
  readonly midi: number;
  /** Partial 1 in equal temperament, without stretch: 30 cents of stretch at C8 make 3.5 % of tension. */
  readonly frequencyHz: number;
  readonly stringCount: number | null;
  readonly isWound: boolean;
  /** Of one string. */
  readonly tensionN: number | null;
  /** Of all the note's strings. */
  readonly noteTensionN: number | null;
  /** In the plain wire, or in the core. */
  readonly stressMpa: number | null;
  /** Of the wire that carries; null where the diameter is missing. */
  readonly strength: StrengthReading | null;
  /** Stress over tensile strength. */
  readonly breakingShare: number | null;
  /** For a wound string a lower bound: see predictedB.ts. */
  readonly predictedB: number | null;
  /** Fields of the row that were not there and are needed. */
  readonly missing: readonly ScheduleField[];
  /** Fields that the figures rest on and nobody measured. */
  readonly interpolated: readonly ScheduleField[];
};

/** What a string is made of, as far as a row tells it. */
export type StringBuild = {
  readonly speakingLengthMm: number;
  /** The plain wire, or the core. */
  readonly carryingDiameterMm: number;
  readonly overallDiameterMm: number;
  readonly wrap: WrapMetal | null;
  readonly densityKgPerM3: number;
  readonly youngsModulusGpa: number;
};

const NEEDED: readonly ScheduleField[] = ['stringCount', 'speakingLengthMm', 'wireDiameterMm'];
const NEEDED_WOUND: readonly ScheduleField[] = [...NEEDED, 'coreDiameterMm', 'wrap'];

/**
 * @param ownGrades the user's own wire tables
 * @throws {RangeError} if the pitch standard or a dimension is not above zero
 */
export function noteFigures(
  row: ScheduleRow,
  pitchStandardHz: number,
  ownGrades: readonly WireGrade[] = [],
): NoteFigures {
  const needed = isWound(row) ? NEEDED_WOUND : NEEDED;
  const frequencyHz = midiToHz(row.midi, pitchStandardHz);
  const grade = gradeNamed(row.wireGrade, ownGrades);
  const build = stringBuild(row, grade);
  const load = build && loadOfBuild(build, frequencyHz);
  const strength = build ? tensileStrengthAt(grade, build.carryingDiameterMm) : null;
  return {
    midi: row.midi,
    frequencyHz,
    stringCount: row.stringCount,
    isWound: isWound(row),
    tensionN: load?.tensionN ?? null,
    noteTensionN: load && row.stringCount !== null ? load.tensionN * row.stringCount : null,
    stressMpa: load?.stressMpa ?? null,
    strength,
    breakingShare: load && strength?.known ? load.stressMpa / strength.tensileStrengthMpa : null,
    predictedB: build && load ? expectedB(build, load) : null,
    missing: needed.filter((field) => row[field] === null),
    interpolated: needed.filter((field) => row.interpolated.includes(field)),
  };
}

/** Undefined where a dimension is missing, or a core is not thinner than its string (checkSchedule tells). Wire of an unknown grade is taken as modern steel. */
function stringBuild(row: ScheduleRow, grade: WireGrade | undefined): StringBuild | undefined {
  const { speakingLengthMm, wireDiameterMm, coreDiameterMm, wrap } = row;
  if (speakingLengthMm === null || wireDiameterMm === null) return undefined;
  if (isWound(row) && (coreDiameterMm === null || wrap === null || coreDiameterMm >= wireDiameterMm)) return undefined;
  return {
    speakingLengthMm,
    carryingDiameterMm: coreDiameterMm ?? wireDiameterMm,
    overallDiameterMm: wireDiameterMm,
    wrap,
    densityKgPerM3: grade?.densityKgPerM3 ?? STEEL_DENSITY.value,
    youngsModulusGpa: grade?.youngsModulusGpa ?? STEEL_YOUNGS_MODULUS.value,
  };
}

function loadOfBuild(build: StringBuild, frequencyHz: number): StringLoad {
  const { speakingLengthMm, carryingDiameterMm: coreDiameterMm, overallDiameterMm, wrap, densityKgPerM3 } = build;
  const massPerLengthKgPerM =
    wrap === null
      ? (Math.PI / 4) * densityKgPerM3 * (coreDiameterMm / 1000) ** 2
      : massPerLength({ coreDiameterMm, overallDiameterMm, wrap }, densityKgPerM3);
  return loadOfMass({ massPerLengthKgPerM, coreDiameterMm, speakingLengthMm }, frequencyHz);
}

export function expectedB(build: StringBuild, load: StringLoad): number {
  const { carryingDiameterMm: coreDiameterMm, speakingLengthMm, youngsModulusGpa } = build;
  return predictedB({ coreDiameterMm, speakingLengthMm, tensionN: load.tensionN, youngsModulusGpa });
}
