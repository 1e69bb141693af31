/**
 * The mistuning between the strings of a unison that best explains the beats of all partials, and how far it explains them.
 *
 * A mistuning shifts every partial by the same interval, so its beats keep their cents. Each partial whose components stand that far
 * apart speaks for it; each that shows no second component there, though one would have been seen, against.
 */
import type { Beat } from '../../piano/reading.ts';
import { visibleRatio } from './beats.ts';
import type { PartialFit } from './partialFit.ts';

export type BeatRow = {
  readonly partial: PartialFit;
  readonly beats: readonly Beat[];
  /** Against the loudest partial. */
  readonly levelDb: number;
};

export type Mistuning = {
  readonly cents: number;
  readonly matched: readonly BeatRow[];
  /** Natural logarithm of the odds of strings out of tune against false beats. */
  readonly logOdds: number;
  /** Signed offsets of the other strings from the main one. */
  readonly offsetsCents: readonly number[];
};

const CENTS_PER_LOG = 1200 / Math.LN2;
/** Chance that a partial matches under the wrong cause (a false beat that happens to have that rate), and under the right one. */
const CHANCE_MATCH = 0.12;
const TRUE_MATCH = 0.88;
/** A second string's partial is seldom weaker than this against the first's. */
const WEAKEST_RATIO = 0.17;
/** Coupling at the bridge shifts the rates of single partials by about this. */
const RATE_TOLERANCE = 0.12;

export function bestMistuning(rows: readonly BeatRow[]): Mistuning {
  const trials = rows.flatMap((row) => row.beats.map((beat) => (CENTS_PER_LOG * beat.rateHz) / row.partial.hz));
  const judged = trials.map((cents) => judge(rows, cents));
  return judged.reduce((a, b) => (b.logOdds > a.logOdds ? b : a), {
    cents: 0,
    matched: [],
    logOdds: -Infinity,
    offsetsCents: [],
  });
}

function judge(rows: readonly BeatRow[], cents: number): Mistuning {
  const rateOn = (row: BeatRow) => (cents * row.partial.hz) / CENTS_PER_LOG;
  const matched = rows.filter((row) => matches(row, rateOn(row)));
  const missing = rows.filter(
    (row) => !matched.includes(row) && visibleRatio(row.partial, rateOn(row)) < WEAKEST_RATIO,
  );
  const forIt = Math.log(TRUE_MATCH / CHANCE_MATCH);
  const logOdds = (matched.length - 1) * forIt - missing.length * forIt;
  return { cents, matched, logOdds, offsetsCents: signedOffset(matched, cents) };
}

/** Any two components, believed or only suspected, this far apart, within the tolerance or their uncertainty. */
function matches(row: BeatRow, expectedHz: number): boolean {
  const { components, suspected } = row.partial;
  return [components, suspected].some((list) =>
    list.some((a, i) =>
      list.slice(i + 1).some((b) => {
        const sigma = Math.hypot(a.standardUncertaintyHz, b.standardUncertaintyHz);
        const isKnown = sigma < 0.3 * expectedHz;
        return (
          isKnown && Math.abs(Math.abs(a.hz - b.hz) - expectedHz) < Math.max(RATE_TOLERANCE * expectedHz, 2.5 * sigma)
        );
      }),
    ),
  );
}

/** Where the other string stands: the side on which most partials have it. */
function signedOffset(rows: readonly BeatRow[], cents: number): number[] {
  const offsets = rows.flatMap(({ partial }) =>
    partial.components.slice(1).map((other) => (CENTS_PER_LOG * (other.hz - partial.components[0]!.hz)) / partial.hz),
  );
  const near = offsets.filter((offset) => Math.abs(Math.abs(offset) - cents) < 0.15 * cents);
  if (near.length === 0) return [];
  const above = near.filter((offset) => offset > 0);
  const side = (above.length * 2 >= near.length ? above : near.filter((offset) => offset < 0)).sort((a, b) => a - b);
  return [side[side.length >> 1]!];
}
