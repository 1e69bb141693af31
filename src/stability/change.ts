/**
 * How far each string's pitch moved between two surveys, in cents of the string's own former frequency.
 *
 * Model: the string's tension changes and nothing else. Then n²·B·f0² stays as it is, so that partial n moves by 1/(1 + B·n²) of
 * what f0 moves (from f_n² = n²·f0² + n⁴·B·f0², H. Fletcher 1964; derived here). Each partial's change in cents, times
 * (1 + B·n²)/(1 + B), is therefore its own reading of how far partial 1 moved; stretch and the pitch standard drop out. Where B
 * was not measured the factor is left at 1, and a change of 10 cents then reads up to 1 cent small from partials with B·n² = 0.1.
 * Not valid where the wire was changed in between.
 */
import type { NoteReading, StringPosition } from '../piano/reading.ts';
import { changeOfFrequency, changeOfPartials, type PartialFrequency } from './changeOfPartials.ts';

export type NoteChange = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** Positive: sharper than before. */
  readonly changeCents: number;
  /** Of reading these two takes. What one strike and the next differ by is common to all partials and not in it. */
  readonly standardUncertaintyCents: number;
  readonly method: 'partials' | 'partial 1';
  /** How many partials had a say. */
  readonly partialCount: number;
};

/** A string that was read at the one survey only. */
export type UnpairedString = { readonly midi: number; readonly stringPosition: StringPosition };

export type SurveyChange = {
  /** In order of note and string. */
  readonly notes: readonly NoteChange[];
  /** Read before, not now. */
  readonly missing: readonly UnpairedString[];
  /** Read now, not before. */
  readonly added: readonly UnpairedString[];
};

/**
 * The change of every string that both surveys read. Same note and same string position are compared, nothing else: an open
 * unison is not its centre string. Where a list holds a string twice, the later entry counts: hand in kept takes only.
 */
export function changeBetween(before: readonly NoteReading[], after: readonly NoteReading[]): SurveyChange {
  const beforeByString = byString(before);
  const afterByString = byString(after);
  const notes: NoteChange[] = [];
  for (const [key, reading] of beforeByString) {
    const later = afterByString.get(key);
    if (later) notes.push(changeOfString(reading, later));
  }
  const missing = [...beforeByString]
    .filter(([key]) => !afterByString.has(key))
    .map(([, reading]) => stringOf(reading));
  const added = [...afterByString].filter(([key]) => !beforeByString.has(key)).map(([, reading]) => stringOf(reading));
  return { notes: notes.sort(byNote), missing: missing.sort(byNote), added: added.sort(byNote) };
}

/**
 * The change of one string. With two or more partials measured on both sides: their weighted mean, in which a partial that
 * disagrees with the rest loses its weight; else from partial 1 as read (measured or fitted).
 * @throws {RangeError} if the readings are of different notes or strings, or a frequency is not above zero
 */
export function changeOfString(before: NoteReading, after: NoteReading): NoteChange {
  if (before.midi !== after.midi || before.stringPosition !== after.stringPosition)
    throw new RangeError(
      `before and after must be the same string, got ${before.midi}/${before.stringPosition} and ${after.midi}/${after.stringPosition}`,
    );
  const change = changeOfPartials(partialsOf(before), partialsOf(after), meanInharmonicity(before, after));
  const string = stringOf(before);
  if (!change.known || commonPartialCount(before, after) < 2) {
    const { cents, sigmaCents } = changeOfFrequency(partial1Of(before), partial1Of(after));
    return {
      ...string,
      changeCents: cents,
      standardUncertaintyCents: sigmaCents,
      method: 'partial 1',
      partialCount: 1,
    };
  }
  return {
    ...string,
    changeCents: change.cents,
    standardUncertaintyCents: change.standardUncertaintyCents,
    method: 'partials',
    partialCount: change.partialCount,
  };
}

function partialsOf({ partials }: NoteReading): PartialFrequency[] {
  return partials.map(({ partialNumber, frequencyHz, frequencyStandardUncertaintyHz }) => ({
    partialNumber,
    hz: frequencyHz,
    standardUncertaintyHz: frequencyStandardUncertaintyHz,
  }));
}

function partial1Of(reading: NoteReading) {
  return { hz: reading.partial1Hz, standardUncertaintyHz: reading.partial1StandardUncertaintyHz };
}

function commonPartialCount(before: NoteReading, after: NoteReading): number {
  const later = new Set(after.partials.map(({ partialNumber }) => partialNumber));
  return before.partials.filter(({ partialNumber }) => later.has(partialNumber)).length;
}

/** Of the two readings, so that the change comes out the same backwards; 0 where neither has it. */
function meanInharmonicity(before: NoteReading, after: NoteReading): number {
  const one = before.inharmonicityB ?? after.inharmonicityB ?? 0;
  const other = after.inharmonicityB ?? one;
  return (one + other) / 2;
}

function byString(readings: readonly NoteReading[]): Map<number, NoteReading> {
  return new Map(readings.map((reading) => [reading.midi * 4 + reading.stringPosition, reading]));
}

function stringOf(reading: NoteReading): UnpairedString {
  return { midi: reading.midi, stringPosition: reading.stringPosition };
}

function byNote(a: UnpairedString, b: UnpairedString): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
