/** One interval of a judged instrument, note by note: what was read, what of it the whole instrument did, and what is left. */
import type { Drift } from './drift/analyseDrift.ts';

export type ChangePart = {
  readonly midi: number;
  /** As read: the sum of the next two. */
  readonly cents: number;
  /** What season, temperature, settling and the common course account for. */
  readonly wholeCents: number;
  readonly ownCents: number;
  /** Of the own part: reading and stray movement. */
  readonly standardUncertaintyCents: number;
};

/** In the order of the notes; empty where the interval has no readings on both sides. */
export function changeInParts({ detail }: Pick<Drift, 'detail'>, intervalIndex: number): ChangePart[] {
  return detail.changes
    .filter((change) => change.intervalIndex === intervalIndex)
    .flatMap(({ stringIndex, cents, wholeCents, ownCents, standardUncertaintyCents }) => {
      const midi = detail.strings[stringIndex]?.midi;
      return midi === undefined ? [] : [{ midi, cents, wholeCents, ownCents, standardUncertaintyCents }];
    })
    .sort((a, b) => a.midi - b.midi);
}

/** The interval over which humidity changed most, counted among the last `count`; -1 where there is none. */
export function mostSeasonalInterval(
  { detail, intervals }: Pick<Drift, 'detail' | 'intervals'>,
  count: number,
): number {
  const first = Math.max(0, intervals.length - count);
  return intervals.reduce((best, _, index) => {
    if (index < first) return best;
    return best === -1 || seasonOf(detail, index) > seasonOf(detail, best) ? index : best;
  }, -1);
}

function seasonOf(detail: Drift['detail'], index: number): number {
  return Math.abs(detail.seasonPct[index] ?? 0);
}
