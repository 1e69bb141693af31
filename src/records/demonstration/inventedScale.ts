/** What an invented piano's strings are made of, and the inharmonicity that follows. */
import { midiToHz } from '../../piano/note.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { gradeNamed } from '../../piano/wireGrade.ts';
import { STEEL_DENSITY, STEEL_YOUNGS_MODULUS, WRAP_DENSITIES, WRAP_FILL } from '../../piano/wireMaterial.ts';

export type InventedScale = {
  readonly wireGrade: string;
  readonly plain: {
    readonly lengthAtA7Mm: number;
    /** 1 would double the length in each octave down. */
    readonly octavesOfLength: number;
    readonly thinnestMm: number;
    /** Half a size thicker every so many notes down from A7. */
    readonly notesPerSize: number;
  };
  /** At the bottom and at the top of the bass bridge. */
  readonly wound: {
    readonly lengthMm: readonly [number, number];
    readonly coreMm: readonly [number, number];
    readonly pullN: readonly [number, number];
  };
};

/** What turns, bare ends and a wrap that stiffens a little add to a wound string's B. Chosen, within what is published. */
const WOUND_STIFFENING = 1.2;

/**
 * B of a row's string at 440 Hz, of an elastic wire on two pins: π³·E·d⁴/(64·T·L²) with T = μ·(2·L·f)²; a wound string with its core's
 * stiffness and its whole mass. The records do not judge: the stringing desk works this out for itself, and a test holds the two together.
 * @throws {RangeError} if the row has no length or no wire
 */
export function scaleInharmonicity(row: ScheduleRow): number {
  const { speakingLengthMm, wireDiameterMm, coreDiameterMm, wrap } = row;
  if (speakingLengthMm === null || wireDiameterMm === null) throw new RangeError(`row ${row.midi} has no wire`);
  const lengthM = speakingLengthMm / 1000;
  const carryingM = (coreDiameterMm ?? wireDiameterMm) / 1000;
  const wrapKg = wrap ? WRAP_FILL * WRAP_DENSITIES[wrap].value * ((wireDiameterMm / 1000) ** 2 - carryingM ** 2) : 0;
  const massKgPerM = (Math.PI / 4) * (STEEL_DENSITY.value * carryingM ** 2 + wrapKg);
  const tensionN = massKgPerM * (2 * lengthM * midiToHz(row.midi, 440)) ** 2;
  const modulusPa = 1e9 * (gradeNamed(row.wireGrade)?.youngsModulusGpa ?? STEEL_YOUNGS_MODULUS.value);
  const inharmonicityB = (Math.PI ** 3 * modulusPa * carryingM ** 4) / (64 * tensionN * lengthM ** 2);
  return wrap ? WOUND_STIFFENING * inharmonicityB : inharmonicityB;
}
