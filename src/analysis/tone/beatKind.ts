/**
 * What a beat comes from. Two strings out of tune with each other beat on every partial, at a rate in proportion to the partial's
 * number; a false beat of one string sits on some partials only (B. Capleton, J. Acoust. Soc. Am. 115 (2004) 885–892: a bridge
 * whose mobility differs between directions near one frequency). The rates of all partials, and the partials that do not beat
 * though they would have shown it, decide.
 */
import type { Beating, StringPosition } from '../../piano/reading.ts';
import { beatsOf } from './beats.ts';
import type { PartialFit } from './partialFit.ts';

export type BeatJudgement = {
  readonly beating: Beating;
  /** Offsets in cents of the other strings from the main one, where the unison's strings could be told apart. */
  readonly stringOffsetsCents: readonly number[];
};

const CENTS_PER_LOG = 1200 / Math.LN2;
/** A partial this far below the loudest is not counted, nor heard. */
const FAINT_DB = 45;

type Row = {
  readonly partial: PartialFit;
  readonly beats: ReturnType<typeof beatsOf>;
  readonly levelDb: number;
};

export function judgeBeating(partials: readonly PartialFit[], stringPosition: StringPosition): BeatJudgement {
  const rows = rowsOf(partials);
  const beatingRows = rows.filter((row) => row.beats.length > 0);
  if (beatingRows.length === 0) return { beating: withoutBeat(rows), stringOffsetsCents: [] };
  const unison = bestMistuning(rows);
  const looksLikeUnison = unison.matched.length >= 2 && unison.share >= 0.6;
  if (stringPosition !== 0) {
    const hint =
      looksLikeUnison && unison.matched.length >= 3
        ? 'the rate grows with the partial number, as from a neighbour not muted or a loose bridge pin'
        : 'it sits on some partials of this one string';
    return { beating: summary('false beat', beatingRows, hint), stringOffsetsCents: [] };
  }
  if (looksLikeUnison) {
    const reason = `the rate grows with the partial number, as between strings ${unison.cents.toFixed(1)} cents apart`;
    return {
      beating: summary('unison', unison.matched, reason),
      stringOffsetsCents: stringOffsets(rows, unison.cents),
    };
  }
  const contradicted = unison.share <= 0.45 && unison.assessable >= 2;
  if (contradicted) {
    return {
      beating: summary(
        'false beat',
        beatingRows,
        'other partials that would beat with it, if strings were out of tune, do not',
      ),
      stringOffsetsCents: [],
    };
  }
  const reason = 'too few partials are heard well enough to tell a false beat from strings out of tune';
  return { beating: summary('undetermined', beatingRows, reason), stringOffsetsCents: [] };
}

function rowsOf(partials: readonly PartialFit[]): Row[] {
  const levels = partials.map((partial) => 20 * Math.log10(partial.components[0]!.amplitude));
  const loudest = Math.max(...levels);
  return partials
    .map((partial, i) => ({ partial, beats: beatsOf(partial), levelDb: levels[i]! - loudest }))
    .filter((row) => row.levelDb > -FAINT_DB);
}

/** Would a beat of this rate, at least 3 dB deep, have been seen on this partial? */
function wouldShow(row: Row, rateHz: number): boolean {
  return row.partial.audibleS * rateHz > 1 && row.partial.snrDb > 15;
}

/** The slowest beat that the record would have shown. */
const LEAST_ASSESSABLE_S = 0.8;

function withoutBeat(rows: readonly Row[]): Beating {
  const longest = rows
    .filter((row) => row.partial.snrDb > 15)
    .reduce((most, row) => Math.max(most, row.partial.audibleS), 0);
  const none = { rateHz: null, depthDb: null, partialNumbers: [] };
  if (longest < LEAST_ASSESSABLE_S) {
    return { ...none, kind: 'undetermined', reason: 'not assessable: the tone dies before a slow beat could show' };
  }
  return { ...none, kind: 'none', reason: `no beat faster than ${(1 / longest).toFixed(1)} a second on any partial` };
}

function rateInCents(rateHz: number, partial: PartialFit): number {
  return (CENTS_PER_LOG * rateHz) / partial.hz;
}

/** The mistuning that explains most: partials that beat at its rate, against those that ought to and don't. */
function bestMistuning(rows: readonly Row[]) {
  const trials = rows.flatMap((row) => row.beats.map((beat) => rateInCents(beat.rateHz, row.partial)));
  let best = { cents: 0, matched: [] as Row[], assessable: 0, share: 0, score: -Infinity };
  for (const cents of trials) {
    const matched = rows.filter((row) => matches(row, cents));
    const missing = rows.filter(
      (row) => !matched.includes(row) && wouldShow(row, (cents * row.partial.hz) / CENTS_PER_LOG),
    );
    const assessable = matched.length + missing.length;
    const score = matched.length - missing.length;
    if (score <= best.score) continue;
    best = { cents, matched, assessable, share: assessable > 0 ? matched.length / assessable : 0, score };
  }
  return best;
}

/** Rates agree with the mistuning within a tenth, or within their uncertainty. */
function matches(row: Row, cents: number): boolean {
  const expectedHz = (cents * row.partial.hz) / CENTS_PER_LOG;
  return row.beats.some((beat) => {
    const allowed = Math.max(0.12 * expectedHz, 3 * beat.rateStandardUncertaintyHz);
    return Math.abs(beat.rateHz - expectedHz) <= allowed;
  });
}

/** The beat heard most: loud partial, deep beat. */
function summary(kind: Beating['kind'], rows: readonly Row[], reason: string): Beating {
  const audible = (row: Row) => row.levelDb + 1.5 * Math.min(row.beats[0]?.depthDb ?? 0, 12);
  const loudest = rows.reduce((a, b) => (audible(b) > audible(a) ? b : a));
  const beat = loudest.beats[0];
  return {
    kind,
    rateHz: beat?.rateHz ?? null,
    depthDb: beat?.depthDb ?? null,
    partialNumbers: rows.map((row) => row.partial.partialNumber).sort((a, b) => a - b),
    reason,
  };
}

/** Signed offsets of the other strings from the main component, pooled over the partials. */
function stringOffsets(rows: readonly Row[], cents: number): number[] {
  const signed = rows.flatMap((row) => {
    const [main, ...others] = row.partial.components;
    return others.map((other) => (CENTS_PER_LOG * (other.hz - main!.hz)) / row.partial.hz);
  });
  const near = signed.filter((offset) => Math.abs(Math.abs(offset) - cents) < 0.15 * cents);
  if (near.length === 0) return [];
  const positive = near.filter((offset) => offset > 0);
  const side = positive.length * 2 >= near.length ? positive : near.filter((offset) => offset < 0);
  const sorted = [...side].sort((a, b) => a - b);
  return [sorted[sorted.length >> 1]!];
}
