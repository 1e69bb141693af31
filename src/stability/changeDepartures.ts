/** Which strings left their neighbours between two surveys. */
import type { StringPosition } from '../piano/reading.ts';
import { medianOf, robustScatter } from '../piano/robustStatistics.ts';
import type { NoteChange } from './change.ts';

export type Departure = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** The string's change less what its neighbours' changes lead one to expect. */
  readonly departureCents: number;
  readonly expectedCents: number;
  /** The departure over the robust scatter of all departures, or over its own uncertainty where that is larger. */
  readonly departureInScatters: number;
  /** True where it moved much more, or much less, than its neighbours. */
  readonly standsOut: boolean;
};

/** Strings on either side that a string is compared with. */
const NEIGHBOURS_PER_SIDE = 10;

/** Fewer neighbours than this give no scatter worth the name. Chosen; a larger number only leaves out more strings. */
const LEAST_STRINGS = 5;

/**
 * A string stands out beyond this many scatters and this many cents. Chosen: four scatters call one steady string in 16,000 by
 * chance with normal errors; and two or three cents on single strings are ordinary in hard use (practitioners' reports), so
 * they are never called whatever the scatter. Lower figures call more strings that will be back in place at the next survey.
 */
const STANDS_OUT_SCATTERS = 4;
const STANDS_OUT_CENTS = 3;

/**
 * Each string against its neighbours: the ten on either side that were read, of the same string position, since humidity moves
 * left, centre and right strings differently, and of the same bridge where its end is known, since humidity moves the bridges
 * differently. What to expect is the robust straight line through them, so that a season's slope along the compass is no
 * departure. One survey's departure proves nothing about a pin; a repeated one does.
 * Strings with fewer than five neighbours are left out.
 * @param bassBridgeTopMidi the highest note on the bass bridge, null where nobody said
 */
export function departures(changes: readonly NoteChange[], bassBridgeTopMidi: number | null = null): Departure[] {
  const compared = rowsOf(changes, bassBridgeTopMidi).flatMap((row) =>
    row.flatMap((change, index) => againstNeighbours(change, neighboursOf(row, index))),
  );
  if (compared.length === 0) return [];
  const scatterCents = robustScatter(
    compared.map((entry) => entry.departureCents),
    0,
  );
  return compared.map((entry) => judged(entry, scatterCents)).sort(byNote);
}

/** Strings that can be compared with one another, each row from low to high. */
function rowsOf(changes: readonly NoteChange[], bassBridgeTopMidi: number | null): NoteChange[][] {
  const top = bassBridgeTopMidi ?? Number.NEGATIVE_INFINITY;
  return [0, 1, 2, 3].flatMap((position) => {
    const row = changes.filter((change) => change.stringPosition === position).sort((a, b) => a.midi - b.midi);
    return [row.filter((change) => change.midi <= top), row.filter((change) => change.midi > top)];
  });
}

function neighboursOf(row: readonly NoteChange[], index: number): NoteChange[] {
  const below = row.slice(Math.max(0, index - NEIGHBOURS_PER_SIDE), index);
  return [...below, ...row.slice(index + 1, index + 1 + NEIGHBOURS_PER_SIDE)];
}

type Compared = Omit<Departure, 'departureInScatters' | 'standsOut'> & { readonly ownSigmaCents: number };

function againstNeighbours(change: NoteChange, neighbours: readonly NoteChange[]): Compared[] {
  if (neighbours.length < LEAST_STRINGS) return [];
  const expectedCents = expectedAt(change.midi, neighbours);
  return [
    {
      midi: change.midi,
      stringPosition: change.stringPosition,
      departureCents: change.changeCents - expectedCents,
      expectedCents,
      ownSigmaCents: change.standardUncertaintyCents,
    },
  ];
}

/**
 * The neighbours' line at a note: the median slope of all pairs, and the median height with that slope.
 * Source: H. Theil 1950 and P. K. Sen, J. Amer. Statist. Assoc. 63 (1968) 1379–1389.
 */
function expectedAt(midi: number, neighbours: readonly NoteChange[]): number {
  const slopes = neighbours.flatMap((one, index) =>
    neighbours
      .slice(index + 1)
      .filter((other) => other.midi !== one.midi)
      .map((other) => (other.changeCents - one.changeCents) / (other.midi - one.midi)),
  );
  const slope = slopes.length > 0 ? medianOf(slopes) : 0;
  return medianOf(neighbours.map((neighbour) => neighbour.changeCents - slope * (neighbour.midi - midi)));
}

function judged({ ownSigmaCents, ...entry }: Compared, scatterCents: number): Departure {
  const unit = Math.max(scatterCents, ownSigmaCents);
  const departureInScatters = unit > 0 ? entry.departureCents / unit : 0;
  const isFar = Math.abs(entry.departureCents) > STANDS_OUT_CENTS;
  const standsOut = isFar && (unit === 0 || Math.abs(departureInScatters) > STANDS_OUT_SCATTERS);
  return { ...entry, departureInScatters, standsOut };
}

function byNote(a: Departure, b: Departure): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
