/** The judgement's workings put together for looking at: by string and visit, between two visits, and one string's years. */
import type { StringPosition } from '../piano/reading.ts';
import type { Drift } from './drift/analyseDrift.ts';
import type { StringChange } from './drift/driftDetail.ts';

export type StringAddress = { readonly midi: number; readonly stringPosition: StringPosition };

export type OwnOffset = {
  /** Date of the visit that found it so. */
  readonly on: string;
  /** Since the first visit, or over this interval alone. */
  readonly cents: number;
  readonly standardUncertaintyCents: number;
};

export type StringRow = StringAddress & {
  /** One for each interval; null where this string gives no change. */
  readonly cells: readonly (OwnOffset | null)[];
};

export type MapKind = 'added-up' | 'each-interval';

/**
 * What each string did by itself, season and the whole instrument's movement taken out. Added up over the intervals that tell: over one
 * that does not, the string is taken to have stood still. Uncertainties are added as independent ones.
 */
export function driftMap({ detail, intervals }: Drift, kind: MapKind): StringRow[] {
  const byString = changesByString(detail.strings.length, detail.changes);
  return detail.strings.map(({ midi, stringPosition }, i) => {
    let sum = 0;
    let variance = 0;
    const own = byString[i] ?? new Map<number, StringChange>();
    const cells = intervals.map((interval, k) => {
      const change = own.get(k);
      if (!change) return null;
      if (kind === 'each-interval') {
        sum = 0;
        variance = 0;
      }
      sum += change.ownCents;
      variance += change.standardUncertaintyCents ** 2;
      return { on: interval.toDate, cents: sum, standardUncertaintyCents: Math.sqrt(variance) };
    });
    return { midi, stringPosition, cells };
  });
}

function changesByString(count: number, changes: readonly StringChange[]): Map<number, StringChange>[] {
  const byString = Array.from({ length: count }, () => new Map<number, StringChange>());
  for (const change of changes) byString[change.stringIndex]?.set(change.intervalIndex, change);
  return byString;
}

export type SpanChange = StringAddress & {
  readonly cents: number;
  readonly wholeCents: number;
  readonly wholeUncertaintyCents: number;
  readonly ownCents: number;
  readonly ownUncertaintyCents: number;
  /** Intervals that had a say. */
  readonly intervalCount: number;
};

/**
 * Change of each string from one visit to a later one: the sum over the intervals between them, tunings left out. A string that gives no
 * change in one of the intervals is left out.
 * @param fromDate date of the visit that the first interval starts from
 */
export function changeBetweenVisits({ detail, intervals }: Drift, fromDate: string, toDate: string): SpanChange[] {
  const used = intervals.flatMap((interval, k) =>
    interval.hasBaseline && interval.fromDate >= fromDate && interval.toDate <= toDate ? [k] : [],
  );
  const seasonPct = used.reduce((sum, k) => sum + (detail.seasonPct[k] ?? 0), 0);
  const byString = changesByString(detail.strings.length, detail.changes);
  return detail.strings.flatMap((string, i) => {
    const changes = used.flatMap((k) => byString[i]?.get(k) ?? []);
    if (changes.length === 0 || changes.length < used.length) return [];
    const sum = (value: (change: StringChange) => number) => changes.reduce((total, one) => total + value(one), 0);
    return [
      {
        midi: string.midi,
        stringPosition: string.stringPosition,
        cents: sum((change) => change.cents),
        wholeCents: sum((change) => change.wholeCents),
        wholeUncertaintyCents: detail.isHumidityKnown ? Math.abs(seasonPct) * string.standardUncertainty : 0,
        ownCents: sum((change) => change.ownCents),
        ownUncertaintyCents: Math.sqrt(sum((change) => change.standardUncertaintyCents ** 2)),
        intervalCount: changes.length,
      },
    ];
  });
}

export type StringHistory = StringAddress & {
  /** Starts with nought at the first visit that counts. */
  readonly offsets: readonly OwnOffset[];
  /** The line of the slip, with its band of one standard uncertainty, at the first and last date; null where no rate is known. */
  readonly line:
    | readonly { readonly on: string; readonly cents: number; readonly standardUncertaintyCents: number }[]
    | null;
};

/** What one string did by itself since it was first read, and the line of its rate, laid through the middle of the offsets. */
export function stringHistory(drift: Drift, { midi, stringPosition }: StringAddress): StringHistory | null {
  const index = drift.detail.strings.findIndex((one) => one.midi === midi && one.stringPosition === stringPosition);
  const row = driftMap(drift, 'added-up')[index];
  const firstInterval = row?.cells.findIndex((cell) => cell !== null) ?? -1;
  const first = drift.intervals[firstInterval];
  if (!row || !first) return null;
  const offsets = [
    { on: first.fromDate, cents: 0, standardUncertaintyCents: 0 },
    ...row.cells.filter((cell) => cell !== null),
  ];
  return { midi, stringPosition, offsets, line: lineOf(drift, index, firstInterval, offsets) };
}

function lineOf(
  drift: Drift,
  index: number,
  firstInterval: number,
  offsets: readonly OwnOffset[],
): StringHistory['line'] {
  const slip = drift.pins[index]?.slip;
  const last = offsets.at(-1);
  const first = offsets[0];
  if (!slip || slip.centsPerYear === null || slip.standardUncertainty === null || !first || !last) return null;
  // Time counts only while somebody watched: over intervals that tell nothing of this string the offsets stand still, too.
  const watched = new Map<string, number>([[first.on, 0]]);
  let years = 0;
  for (const [k, interval] of drift.intervals.entries()) {
    const isTold = drift.detail.changes.some((one) => one.stringIndex === index && one.intervalIndex === k);
    if (k < firstInterval || !isTold) continue;
    years += interval.years;
    watched.set(interval.toDate, years);
  }
  const yearsAt = (date: string) => watched.get(date) ?? 0;
  const level = meanOf(offsets.map(({ on, cents }) => cents - (slip.centsPerYear ?? 0) * yearsAt(on)));
  const { centsPerYear, standardUncertainty } = slip;
  return offsets.map(({ on }) => ({
    on,
    cents: level + centsPerYear * yearsAt(on),
    standardUncertaintyCents: standardUncertainty * Math.abs(yearsAt(on) - years / 2),
  }));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
