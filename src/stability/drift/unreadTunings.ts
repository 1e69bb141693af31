/**
 * Intervals that begin with a tuning which nobody surveyed: there is no baseline, but where a string is found against where it is usually
 * left still tells a little. A pin that slips is found flat of its neighbours again and again, however often it is drawn up.
 *
 * Model: a tuner puts each string back to its usual place, give or take. The place is the median of the string's as-left readings, or where
 * there are too few of them a line through its neighbours' usual readings. What that is wrong by comes again in every such interval, so
 * each interval's variance holds it as many times as there are of them: they can never say more together than the place is known.
 */
import type { ChangeInterval, ChangeRow, PianoString, SurveyValues } from './changeRows.ts';
import { median, robustDeviation } from './statistics.ts';

export type UnreadInterval = {
  readonly intervalIndex: number;
  readonly asFound: SurveyValues;
  /** Since when the strings are new, at its beginning; by string. */
  readonly sinceAnewYears: (midi: number) => number | null;
  /** Strings whose own change says nothing, as they were renewed within. */
  readonly isRenewed: (midi: number) => boolean;
};

/** How well a tuner leaves a string, cents, where the readings do not tell (common practice). */
const USUAL_TUNER_CENTS = 0.7;
/** How far a string's proper place lies off a line through its neighbours': stretch is uneven, no two strings are quite alike. */
const OFF_NEIGHBOURS_CENTS = 1;
const LEAST_READINGS = 3;
const REACH = 6;
const LEAST_NEIGHBOURS = 4;

export function unreadTuningChanges(
  strings: readonly PianoString[],
  surveys: ReadonlyMap<string, SurveyValues>,
  unread: readonly UnreadInterval[],
): ChangeRow[] {
  if (unread.length === 0) return [];
  const places = usualPlaces(strings, surveys);
  return unread.flatMap(({ intervalIndex, asFound, sinceAnewYears, isRenewed }) =>
    strings.flatMap(({ midi, stringPosition }, stringIndex) => {
      const found = asFound.values.get(midi * 4 + stringPosition);
      const place = places[stringIndex];
      if (!found || !place || isRenewed(midi)) return [];
      const varianceCents2 =
        found.varianceCents2 + place.tunerCents ** 2 + unread.length * place.standardUncertaintyCents ** 2;
      const cents = found.cents - place.cents;
      return [{ stringIndex, intervalIndex, cents, varianceCents2, sinceAnewYears: sinceAnewYears(midi) }];
    }),
  );
}

type Place = { readonly cents: number; readonly standardUncertaintyCents: number; readonly tunerCents: number };

function usualPlaces(
  strings: readonly PianoString[],
  surveys: ReadonlyMap<string, SurveyValues>,
): (Place | undefined)[] {
  const readingsOf = (stages: readonly string[], { midi, stringPosition }: PianoString) =>
    [...surveys.values()].flatMap(({ stage, values }) => {
      const reading = values.get(midi * 4 + stringPosition);
      return stages.includes(stage) && reading ? [reading.cents] : [];
    });
  const asLeft = strings.map((string) => readingsOf(['as-left'], string));
  const spreads = asLeft.filter((own) => own.length >= LEAST_READINGS).map((own) => robustDeviation(own));
  const tunerCents = Math.max(USUAL_TUNER_CENTS, spreads.length > 0 ? median(spreads) : 0);
  const usual = strings.map((string) => {
    const own = readingsOf(['as-left', 'as-found'], string);
    return own.length >= 2 ? median(own) : Number.NaN;
  });
  return strings.map((string, i) => {
    const own = asLeft[i]!;
    if (own.length >= LEAST_READINGS)
      return { cents: median(own), standardUncertaintyCents: (1.25 * tunerCents) / Math.sqrt(own.length), tunerCents };
    const cents = amongNeighbours(string, strings, usual);
    return cents === undefined ? undefined : { cents, standardUncertaintyCents: OFF_NEIGHBOURS_CENTS, tunerCents };
  });
}

/** A robust line through the neighbours' places (median of slopes, H. Theil 1950), at this string. */
function amongNeighbours(
  { midi }: PianoString,
  strings: readonly PianoString[],
  usual: readonly number[],
): number | undefined {
  const near = strings.flatMap((other, j) => {
    const distance = other.midi - midi;
    return Math.abs(distance) <= REACH && !Number.isNaN(usual[j]!) ? [{ distance, cents: usual[j]! }] : [];
  });
  if (near.length < LEAST_NEIGHBOURS) return undefined;
  const slopes = near.flatMap((a) =>
    near.flatMap((b) => (b.distance > a.distance ? [(b.cents - a.cents) / (b.distance - a.distance)] : [])),
  );
  const slope = slopes.length > 0 ? median(slopes) : 0;
  return median(near.map(({ distance, cents }) => cents - slope * distance));
}

/** Changes of intervals that have a baseline: the others are no changes that anybody saw. */
export function seenChanges(changes: readonly ChangeRow[], intervals: readonly ChangeInterval[]): ChangeRow[] {
  return changes.filter((row) => intervals[row.intervalIndex]!.hasBaseline);
}
