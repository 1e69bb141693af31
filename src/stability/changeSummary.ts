/** What a whole survey's changes say together: how far the instrument moved, and which strings left their neighbours. */
import type { StringPosition } from '../piano/reading.ts';
import type { NoteChange } from './change.ts';
import { medianOf, robustScatter } from './changeStatistics.ts';

/** Fewer strings than this give no scatter worth the name. Chosen; a larger number only says "not enough" more often. */
export const LEAST_STRINGS = 5;

export type WholeChange =
  | {
      readonly known: true;
      readonly medianCents: number;
      /** Of the median, as if the strings moved independently: a season moves whole registers, so it says how well the median is
       * read, not how well it stands for any one register. */
      readonly standardUncertaintyCents: number;
      /** Robust standard deviation of the strings about the median. */
      readonly scatterCents: number;
      readonly stringCount: number;
    }
  | { readonly known: false; readonly reason: 'not-enough-evidence' };

/** A median of normal values scatters by √(π/2) more than their mean (large samples; standing: definition). */
const MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

/** The instrument's median change. */
export function wholeChange(changes: readonly NoteChange[]): WholeChange {
  if (changes.length < LEAST_STRINGS) return { known: false, reason: 'not-enough-evidence' };
  const cents = changes.map((change) => change.changeCents);
  const medianCents = medianOf(cents);
  const scatterCents = robustScatter(cents, medianCents);
  const reading = medianOf(changes.map((change) => change.standardUncertaintyCents));
  const standardUncertaintyCents = (MEDIAN_OVER_MEAN * Math.max(scatterCents, reading)) / Math.sqrt(changes.length);
  return { known: true, medianCents, standardUncertaintyCents, scatterCents, stringCount: changes.length };
}

export type Departure = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** The string's change less the median change of its neighbours. */
  readonly departureCents: number;
  readonly neighboursMedianCents: number;
  /** The departure over the robust scatter of all departures, or over its own uncertainty where that is larger. */
  readonly departureInScatters: number;
  /** True where it moved much more, or much less, than its neighbours. */
  readonly standsOut: boolean;
};

/** Strings on either side that a string is compared with. */
export const NEIGHBOURS_PER_SIDE = 10;

/**
 * A string stands out beyond this many scatters and this many cents. Chosen: four scatters call one steady string in 16,000 by
 * chance with normal errors; and two or three cents on single strings are ordinary in hard use (practitioners' reports), so
 * they are never called whatever the scatter. Lower figures call more strings that will be back in place at the next survey.
 */
export const STANDS_OUT_SCATTERS = 4;
export const STANDS_OUT_CENTS = 3;

/**
 * Each string against its neighbours: the ten on either side that were read, of the same string position, since humidity moves
 * left, centre and right strings differently. One survey's departure proves nothing about a pin; a repeated one does.
 * Strings with fewer than five neighbours are left out. Near the ends of the compass the neighbours lie mostly on one side, so
 * a slope along the compass shows there as a small departure.
 */
export function departures(changes: readonly NoteChange[]): Departure[] {
  const compared = [0, 1, 2, 3].flatMap((position) => {
    const row = changes.filter((change) => change.stringPosition === position).sort((a, b) => a.midi - b.midi);
    return row.flatMap((change, index) => againstNeighbours(change, neighboursOf(row, index)));
  });
  if (compared.length === 0) return [];
  const scatterCents = robustScatter(
    compared.map((entry) => entry.departureCents),
    0,
  );
  return compared.map((entry) => judged(entry, scatterCents));
}

function neighboursOf(row: readonly NoteChange[], index: number): NoteChange[] {
  const below = row.slice(Math.max(0, index - NEIGHBOURS_PER_SIDE), index);
  return [...below, ...row.slice(index + 1, index + 1 + NEIGHBOURS_PER_SIDE)];
}

type Compared = Pick<Departure, 'midi' | 'stringPosition' | 'departureCents' | 'neighboursMedianCents'> & {
  readonly ownSigmaCents: number;
};

function againstNeighbours(change: NoteChange, neighbours: readonly NoteChange[]): Compared[] {
  if (neighbours.length < LEAST_STRINGS) return [];
  const neighboursMedianCents = medianOf(neighbours.map((neighbour) => neighbour.changeCents));
  return [
    {
      midi: change.midi,
      stringPosition: change.stringPosition,
      departureCents: change.changeCents - neighboursMedianCents,
      neighboursMedianCents,
      ownSigmaCents: change.standardUncertaintyCents,
    },
  ];
}

function judged({ ownSigmaCents, ...entry }: Compared, scatterCents: number): Departure {
  const unit = Math.max(scatterCents, ownSigmaCents);
  const departureInScatters = unit > 0 ? entry.departureCents / unit : 0;
  const standsOut =
    Math.abs(entry.departureCents) > STANDS_OUT_CENTS &&
    (unit === 0 || Math.abs(departureInScatters) > STANDS_OUT_SCATTERS);
  return { ...entry, departureInScatters, standsOut };
}
