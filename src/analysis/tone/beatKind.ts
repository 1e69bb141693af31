/**
 * What a beat comes from. Two strings out of tune with each other beat on every partial, at a rate in proportion to the partial's
 * frequency; a false beat of one string sits on some partials only (B. Capleton, J. Acoust. Soc. Am. 115 (2004) 885–892: a bridge
 * whose mobility differs between directions near one frequency). The rates of all partials, and the partials that do not beat
 * though they would have shown it, are weighed against each other.
 */
import type { Beating, StringPosition } from '../../piano/reading.ts';
import { beatsOf, visibleRatio } from './beats.ts';
import { type BeatRow, bestMistuning, type Mistuning } from './mistuning.ts';
import type { PartialFit } from './partialFit.ts';

export type BeatJudgement = {
  readonly beating: Beating;
  /** Offsets in cents of the other strings from the main one, where the unison's strings could be told apart. */
  readonly stringOffsetsCents: readonly number[];
};

/** A partial this far below the loudest is not counted, nor heard. */
const FAINT_DB = 45;
/** Log odds that have to stand for or against strings out of tune: about five to one. */
const LEAST_LOG_ODDS = 1.6;

export function judgeBeating(partials: readonly PartialFit[], stringPosition: StringPosition): BeatJudgement {
  const rows = rowsOf(partials);
  const beatingRows = rows.filter((row) => row.beats.length > 0);
  if (beatingRows.length === 0) return { beating: withoutBeat(rows), stringOffsetsCents: [] };
  const mistuning = bestMistuning(rows);
  if (stringPosition !== 0) {
    const isProportional = mistuning.logOdds > LEAST_LOG_ODDS && mistuning.matched.length >= 3;
    const hint = isProportional
      ? 'the rate grows with the partial number, as from a neighbour not muted or a loose bridge pin'
      : 'it sits on some partials of this one string';
    return { beating: summary('false beat', beatingRows, hint), stringOffsetsCents: [] };
  }
  return judgeUnison(beatingRows, mistuning);
}

function judgeUnison(beatingRows: readonly BeatRow[], mistuning: Mistuning): BeatJudgement {
  if (mistuning.logOdds > LEAST_LOG_ODDS) {
    const reason = `the rate grows with the partial number, as between strings ${mistuning.cents.toFixed(1)} cents apart`;
    const heard = mistuning.matched.filter((row) => row.beats.length > 0);
    return {
      beating: summary('unison', heard.length > 0 ? heard : beatingRows, reason),
      stringOffsetsCents: mistuning.offsetsCents,
    };
  }
  if (mistuning.logOdds < -LEAST_LOG_ODDS) {
    const reason = 'other partials, which would beat too if strings were out of tune, do not';
    return { beating: summary('false beat', beatingRows, reason), stringOffsetsCents: [] };
  }
  const reason = 'too few partials are heard well enough to tell a false beat from strings out of tune';
  return { beating: summary('undetermined', beatingRows, reason), stringOffsetsCents: [] };
}

function rowsOf(partials: readonly PartialFit[]): BeatRow[] {
  const levels = partials.map((partial) => 20 * Math.log10(partial.components[0]!.amplitude));
  const loudest = Math.max(...levels);
  return partials
    .map((partial, i) => ({ partial, beats: beatsOf(partial), levelDb: levels[i]! - loudest }))
    .filter((row) => row.levelDb > -FAINT_DB);
}

/** A beat of this rate is the slowest that matters to the ear; of this ratio (3 dB deep) the shallowest. */
const SLOW_BEAT_HZ = 1;
const SHALLOW_RATIO = 0.17;

/** "None" is said only where a beat of one a second, 3 dB deep, would have shown on the loudest partials. */
function withoutBeat(rows: readonly BeatRow[]): Beating {
  const none = { rateHz: null, depthDb: null, partialNumbers: [] };
  const loudest = [...rows].sort((a, b) => b.levelDb - a.levelDb).slice(0, 3);
  const slowest = slowestVisibleHz(loudest);
  if (slowest > SLOW_BEAT_HZ) {
    return { ...none, kind: 'undetermined', reason: 'not assessable: the tone dies before a slow beat could show' };
  }
  return {
    ...none,
    kind: 'none',
    reason: `no partial beats; ${slowest.toFixed(1)} a second or faster would have shown`,
  };
}

/** What the record shows on average it may miss by chance: a promise takes this much more. */
const SAFE = 1.6;
/** Less of a beat than this is not reported as one (beats.ts), so it is not promised either. */
const LEAST_CYCLES = 0.6;

/** The slowest rate at which a 3 dB beat would have shown on one of the partials. */
function slowestVisibleHz(rows: readonly BeatRow[]): number {
  const shows = ({ partial }: BeatRow, rateHz: number) =>
    SAFE * visibleRatio(partial, rateHz) < SHALLOW_RATIO && rateHz * partial.audibleS > LEAST_CYCLES;
  for (let rateHz = 0.1; rateHz < 20; rateHz *= 1.15) {
    if (rows.some((row) => shows(row, rateHz))) return rateHz;
  }
  return Infinity;
}

/** The beat heard most: loud partial, deep beat. */
function summary(kind: Beating['kind'], rows: readonly BeatRow[], reason: string): Beating {
  const audible = (row: BeatRow) => row.levelDb + 1.5 * Math.min(row.beats[0]?.depthDb ?? 0, 12);
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
