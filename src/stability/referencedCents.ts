/**
 * Each reading's height on a scale of its own string, from all of its partials: the differences between readings of one string are then
 * changes partial by partial (changeOfPartials.ts), in which stretch and inharmonicity drop out and a partial that disagrees has no say.
 *
 * The scale's zero is one reading of that string, the one with the most partials: it keeps the height of its own partial 1, and every other
 * reading stands as far from it as its partials moved. A reading with fewer than two partials in common with it keeps its partial 1.
 */
import { hzToCents } from '../piano/cents.ts';
import type { NoteReading } from '../piano/reading.ts';
import { changeOfPartials, type PartialFrequency } from './changeOfPartials.ts';

export type ReadOfString = Pick<NoteReading, 'partial1Hz' | 'inharmonicityB' | 'partials'>;

const LEAST_COMMON = 2;
/** Higher partials add hardly anything to what these say of a change. */
const HIGHEST_PARTIAL = 16;

/**
 * The scale of one string: gives a reading's cents above `nominalHz`.
 * @param readings of one string between two changes of its wire: with another wire the partials lie otherwise
 * @throws {RangeError} if a frequency is not above zero
 */
export function referencedCents(
  readings: readonly ReadOfString[],
  nominalHz: number,
): (reading: ReadOfString) => number {
  const reference = mostPartials(readings);
  const before = reference ? frequenciesOf(reference) : [];
  const numbers = new Set(before.map(({ partialNumber }) => partialNumber));
  return (reading) => {
    const own = hzToCents(reading.partial1Hz, nominalHz);
    if (!reference || reading === reference) return own;
    const after = frequenciesOf(reading).filter(({ partialNumber }) => numbers.has(partialNumber));
    if (after.length < LEAST_COMMON) return own;
    const change = changeOfPartials(before, after, reference.inharmonicityB ?? reading.inharmonicityB ?? 0);
    return change.known ? hzToCents(reference.partial1Hz, nominalHz) + change.cents : own;
  };
}

function mostPartials(readings: readonly ReadOfString[]): ReadOfString | undefined {
  return readings.reduce<ReadOfString | undefined>(
    (best, reading) => (!best || reading.partials.length > best.partials.length ? reading : best),
    undefined,
  );
}

function frequenciesOf({ partials }: ReadOfString): PartialFrequency[] {
  const frequencies: PartialFrequency[] = [];
  for (const { partialNumber, frequencyHz, frequencyStandardUncertaintyHz } of partials) {
    if (partialNumber > HIGHEST_PARTIAL) continue;
    frequencies.push({ partialNumber, hz: frequencyHz, standardUncertaintyHz: frequencyStandardUncertaintyHz });
  }
  return frequencies;
}
