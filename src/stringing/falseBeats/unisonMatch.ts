/**
 * The strings of one note, each recorded alone: how far they are apart, and what would still beat if they were tuned together.
 *
 * Tuned together is taken as equal partials 1. Strings of different B (another wire, another length) then differ on higher partials,
 * by 600·log2 of (1 + B_a·n²)(1 + B_b)/((1 + B_b·n²)(1 + B_a)) cents (derived here from f_n = n·f0·√(1 + B·n²)); false beats stay as they
 * are. Not told: how the strings pull at each other through the bridge, which holds nearly tuned strings together (G. Weinreich, J.
 * Acoust. Soc. Am. 62 (1977) 1474–1484).
 */
import { hzToCents } from '../../piano/cents.ts';
import type { NoteReading, StringPosition } from '../../piano/reading.ts';
import { type FalseBeat, falseBeatOf } from './falseBeatList.ts';

export type StringPair = {
  readonly strings: readonly [StringPosition, StringPosition];
  /** Of the second above the first, by partial 1. */
  readonly cents: number;
  readonly centsStandardUncertainty: number;
  /** As they are, on partial 1. */
  readonly beatHz: number;
  /** Beyond three standard uncertainties. */
  readonly isApart: boolean;
  /** What is left on higher partials when partials 1 agree; empty where a B was not measured. */
  readonly left: readonly {
    readonly partialNumber: number;
    readonly beatHz: number;
    readonly standardUncertaintyHz: number;
  }[];
};

export type UnisonMatch = {
  readonly midi: number;
  readonly pairs: readonly StringPair[];
  readonly falseBeats: readonly FalseBeat[];
  /** The fastest beat that would be left between strings on the partials looked at, where it is beyond doubt; null where none is. */
  readonly leftBeatHz: number | null;
};

export type UnisonMatchOutcome =
  | ({ readonly known: true } & UnisonMatch)
  | { readonly known: false; readonly reason: 'fewer-than-two-strings' };

/** Partials that are commonly heard in a unison. Chosen. */
const PARTIALS_LOOKED_AT = [2, 3, 4, 5, 6];
const SIGMAS = 3;

/**
 * @param readings of one note, each of one string alone; open unisons and takes that cannot be used are passed over
 * @throws {RangeError} if the readings are of different notes
 */
export function unisonMatch(readings: readonly NoteReading[]): UnisonMatchOutcome {
  const single = readings.filter(({ stringPosition, quality }) => stringPosition !== 0 && quality.isUsable);
  const strings = [...new Map(single.map((reading) => [reading.stringPosition, reading])).values()].sort(
    (a, b) => a.stringPosition - b.stringPosition,
  );
  const [first] = strings;
  if (!first || strings.length < 2) return { known: false, reason: 'fewer-than-two-strings' };
  if (strings.some(({ midi }) => midi !== first.midi)) throw new RangeError('readings must be of one note');
  const pairs = strings.flatMap((one, index) => strings.slice(index + 1).map((other) => pairOf(one, other)));
  const sure = pairs.flatMap(({ left }) =>
    left
      .filter(({ beatHz, standardUncertaintyHz }) => beatHz > SIGMAS * standardUncertaintyHz)
      .map(({ beatHz }) => beatHz),
  );
  return {
    known: true,
    midi: first.midi,
    pairs,
    falseBeats: strings.flatMap((reading) => falseBeatOf(reading) ?? []),
    leftBeatHz: sure.length === 0 ? null : Math.max(...sure),
  };
}

function pairOf(one: NoteReading, other: NoteReading): StringPair {
  const cents = hzToCents(other.partial1Hz, one.partial1Hz);
  const centsStandardUncertainty = Math.hypot(one.offsetStandardUncertaintyCents, other.offsetStandardUncertaintyCents);
  return {
    strings: [one.stringPosition, other.stringPosition],
    cents,
    centsStandardUncertainty,
    beatHz: Math.abs(other.partial1Hz - one.partial1Hz),
    isApart: Math.abs(cents) > SIGMAS * centsStandardUncertainty,
    left: leftBetween(one, other),
  };
}

function leftBetween(one: NoteReading, other: NoteReading): StringPair['left'] {
  const [a, b] = [one.inharmonicityB, other.inharmonicityB];
  const [ua, ub] = [one.inharmonicityBStandardUncertainty, other.inharmonicityBStandardUncertainty];
  if (a === null || b === null || ua === null || ub === null) return [];
  const highest = Math.min(...[one, other].map(({ partials }) => Math.max(...partials.map((p) => p.partialNumber))));
  return PARTIALS_LOOKED_AT.filter((number) => number <= highest).map((partialNumber) => {
    const square = partialNumber ** 2;
    const ratio = Math.sqrt(((1 + b * square) * (1 + a)) / ((1 + a * square) * (1 + b)));
    const partialHz = partialNumber * one.partial1Hz * Math.sqrt((1 + a * square) / (1 + a));
    // First order in B, where the uncertainty matters.
    const standardUncertaintyHz = (partialHz * (square - 1) * Math.hypot(ua, ub)) / 2;
    return { partialNumber, beatHz: Math.abs(ratio - 1) * partialHz, standardUncertaintyHz };
  });
}
