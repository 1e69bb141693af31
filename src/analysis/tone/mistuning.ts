/**
 * The mistuning between the strings of a unison that best explains the beats of all partials, and how far it explains them.
 *
 * A mistuning shifts every partial by the same interval, so its beats keep their cents, but for what a slight difference of the strings'
 * inharmonicity adds with n². Each partial whose components stand that far apart speaks for it; each that shows no second component
 * there, though one would have been seen, against.
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
  const points = rows.flatMap((row) =>
    row.beats.map((beat) => ({
      n2: row.partial.partialNumber ** 2,
      cents: (CENTS_PER_LOG * beat.rateHz) / row.partial.hz,
    })),
  );
  const even = points.map(({ cents }): Offset => ({ cents, growth: 0, freedom: 1 }));
  const judged = [...even, ...growingOffsets(points, rows)].map((offset) => judge(rows, offset));
  return judged.reduce((a, b) => (b.logOdds > a.logOdds ? b : a), {
    cents: 0,
    matched: [],
    logOdds: -Infinity,
    offsetsCents: [],
  });
}

/** How far apart two strings stand on partial n: cents + growth·n², with so many figures taken from the beats themselves. */
type Offset = { readonly cents: number; readonly growth: number; readonly freedom: 1 | 2 };

/** Strings of one unison are of one wire; their inharmonicities differ by no more than this share. Chosen, wider than lengths and wires differ. */
const MOST_STIFFNESS_DIFFERENCE = 0.05;

/**
 * Strings of slightly different inharmonicity: ½·ln(1 + B·n²) differs by nearly ½·ΔB·n², so that a small mistuning grows or shrinks along
 * the partials. One offset for each pair of beats that a difference of B within reason would join.
 */
function growingOffsets(points: readonly { n2: number; cents: number }[], rows: readonly BeatRow[]): Offset[] {
  const most = 0.5 * CENTS_PER_LOG * MOST_STIFFNESS_DIFFERENCE * inharmonicityOf(rows);
  return points.flatMap((a) =>
    points.flatMap((b): Offset[] => {
      if (b.n2 <= a.n2) return [];
      const growth = (b.cents - a.cents) / (b.n2 - a.n2);
      return Math.abs(growth) <= most ? [{ cents: a.cents - growth * a.n2, growth, freedom: 2 }] : [];
    }),
  );
}

/** From the lowest and the highest partial, by f_n = n·F0·√(1 + B·n²). */
function inharmonicityOf(rows: readonly BeatRow[]): number {
  const sorted = rows.map(({ partial }) => partial).sort((a, b) => a.partialNumber - b.partialNumber);
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low || !high || low === high) return 0;
  const ratio = ((high.hz / high.partialNumber) * (low.partialNumber / low.hz)) ** 2;
  return Math.max(0, (ratio - 1) / (high.partialNumber ** 2 - ratio * low.partialNumber ** 2));
}

function judge(rows: readonly BeatRow[], offset: Offset): Mistuning {
  const centsOn = ({ partial }: BeatRow) => Math.abs(offset.cents + offset.growth * partial.partialNumber ** 2);
  const rateOn = (row: BeatRow) => (centsOn(row) * row.partial.hz) / CENTS_PER_LOG;
  const matched = rows.filter((row) => matches(row, rateOn(row)));
  const missing = rows.filter(
    (row) => !matched.includes(row) && visibleRatio(row.partial, rateOn(row)) < WEAKEST_RATIO,
  );
  const forIt = Math.log(TRUE_MATCH / CHANCE_MATCH);
  const logOdds = (matched.length - offset.freedom) * forIt - missing.length * forIt;
  const cents = Math.abs(offset.cents + offset.growth);
  return { cents, matched, logOdds, offsetsCents: signedOffset(matched, centsOn) };
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
function signedOffset(rows: readonly BeatRow[], centsOn: (row: BeatRow) => number): number[] {
  const near = rows.flatMap((row) => {
    const [main, ...others] = row.partial.components;
    const cents = centsOn(row);
    return others
      .map((other) => (CENTS_PER_LOG * (other.hz - main!.hz)) / row.partial.hz)
      .filter((offset) => Math.abs(Math.abs(offset) - cents) < 0.15 * cents);
  });
  if (near.length === 0) return [];
  const above = near.filter((offset) => offset > 0);
  const side = (above.length * 2 >= near.length ? above : near.filter((offset) => offset < 0)).sort((a, b) => a - b);
  return [side[side.length >> 1]!];
}
