/** What the evidence says of the pin block, in one of four states, with reasons for and against. */
import { midiToName } from '../../piano/note.ts';
import type { ChangeInterval } from './changeTable.ts';
import type { JudgedPin } from './judgedPin.ts';
import { median, normalBelow } from './statistics.ts';
import type { Zone } from './zoneScan.ts';

export type VerdictState = 'holding' | 'watch' | 'giving way' | 'not enough evidence';

export type Verdict = {
  readonly state: VerdictState;
  readonly reasons: readonly string[];
  /** Slips faster than this are ruled out at 95 % for every string; null where nothing can be ruled out. */
  readonly slipRuledOutAboveCentsPerYear: number | null;
};

export type VerdictFacts = {
  readonly pins: readonly JudgedPin[];
  readonly zones: readonly Zone[];
  readonly intervals: readonly ChangeInterval[];
  /** A slip that matters, cents a year. */
  readonly thresholdCentsPerYear: number;
  readonly isHumidityKnown: boolean;
};

/** Fewer intervals with a baseline, or less time, and even a large slip has not repeated itself. */
const LEAST_INTERVALS = 3;
const LEAST_YEARS = 0.75;
/** Holding is said where slips of this many times the threshold are ruled out. */
const HOLDING_FACTOR = 2;
/** A string likelier than this to slip is named before it is certain. */
export const SUSPECT = 0.7;

export function judgeBlock(facts: VerdictFacts): Verdict {
  const usable = facts.intervals.filter((interval) => interval.hasBaseline);
  const years = usable.reduce((sum, interval) => sum + interval.years, 0);
  const ruledOut = ruledOutAbove(facts.pins);
  const flagged = facts.pins.filter((pin) => pin.isFlagged);
  const counted = `${usable.length} ${usable.length === 1 ? 'interval' : 'intervals'} between an as-left and the next as-found, ${years.toFixed(1)} years in all`;
  const against = contrary(facts, flagged, ruledOut);
  if (facts.zones.length > 0 || flagged.length > 0) {
    const fast = flagged.filter((pin) => (pin.slip.centsPerYear ?? 0) <= -facts.thresholdCentsPerYear);
    const state = facts.zones.length > 0 || fast.length > 0 ? 'giving way' : 'watch';
    return {
      state,
      reasons: [...facts.zones.map(zoneReason), ...pinReasons(flagged, facts.zones), counted, ...against],
      slipRuledOutAboveCentsPerYear: ruledOut,
    };
  }
  if (usable.length < LEAST_INTERVALS || years < LEAST_YEARS || ruledOut === null) {
    return {
      state: 'not enough evidence',
      reasons: [missingEvidence(usable.length, years), counted],
      slipRuledOutAboveCentsPerYear: ruledOut,
    };
  }
  const suspects = facts.pins.filter((pin) => (pin.slip.probability ?? 0) > SUSPECT);
  if (suspects.length > 0) {
    return {
      state: 'watch',
      reasons: [
        `${names(suspects)} went flat more than chance lets expect, but not yet for certain`,
        counted,
        ...against,
      ],
      slipRuledOutAboveCentsPerYear: ruledOut,
    };
  }
  if (ruledOut > HOLDING_FACTOR * facts.thresholdCentsPerYear) {
    const reason = `no string stands out, but a slip of up to ${ruledOut.toFixed(1)} cents a year could still hide in the scatter; further visits would narrow it`;
    return { state: 'not enough evidence', reasons: [reason, counted], slipRuledOutAboveCentsPerYear: ruledOut };
  }
  return {
    state: 'holding',
    reasons: [
      `no string goes flat by itself: slips faster than ${ruledOut.toFixed(1)} cents a year are ruled out at 95 %`,
      counted,
      ...against,
    ],
    slipRuledOutAboveCentsPerYear: ruledOut,
  };
}

/** No string is thought less likely to slip than this, whatever its record. */
const LEAST_DOUBT = 0.005;
/** Strings this many times less certain than the rest were read too seldom for the statement to cover them. */
const SELDOM_READ = 2;

/**
 * The rate at which the expected number of strings that slip faster falls to 0.05, from each string's estimate, uncertainty and
 * probability of slipping at all. Strings already flagged are left out: they are named by themselves.
 */
function ruledOutAbove(pins: readonly JudgedPin[]): number | null {
  const judged = pins.filter((pin) => !pin.isFlagged && pin.slip.centsPerYear !== null);
  if (judged.length === 0) return null;
  const usual = median(judged.map((pin) => pin.slip.standardUncertainty!));
  const open = judged.filter((pin) => pin.slip.standardUncertainty! <= SELDOM_READ * usual);
  const expected = (rate: number) =>
    open.reduce((sum, { slip }) => {
      const z = (-rate - slip.centsPerYear!) / slip.standardUncertainty!;
      return sum + Math.max(slip.probability!, LEAST_DOUBT) * normalBelow(z);
    }, 0);
  for (let rate = 0.1; rate < 20; rate += 0.1) if (expected(rate) < 0.05) return Number(rate.toFixed(1));
  return null;
}

function missingEvidence(count: number, years: number): string {
  const more = Math.max(1, LEAST_INTERVALS - count);
  if (count === 0) return 'no as-left survey is followed by an as-found one: record both at the next visits';
  if (count < LEAST_INTERVALS)
    return `a slip has to repeat itself; ${more} more ${more === 1 ? 'visit' : 'visits'} with as-found and as-left would tell`;
  return `${years.toFixed(1)} years are too short to tell a slip from the season; come back in half a year`;
}

function zoneReason(zone: Zone): string {
  const growing = zone.isAccelerating ? ', faster each year' : '';
  return `${midiToName(zone.fromMidi)} to ${midiToName(zone.toMidi)} go flat together by ${Math.abs(zone.centsPerYear).toFixed(1)} cents a year${growing}`;
}

function pinReasons(flagged: readonly JudgedPin[], zones: readonly Zone[]): string[] {
  const alone = flagged.filter((pin) => !zones.some((zone) => pin.midi >= zone.fromMidi && pin.midi <= zone.toMidi));
  return alone.length === 0
    ? []
    : [
        `${names(alone)} ${alone.length === 1 ? 'goes' : 'go'} flat by ${alone.length === 1 ? 'itself' : 'themselves'}, again and again`,
      ];
}

const MOST_NAMED = 6;

function names(pins: readonly JudgedPin[]): string {
  const list = pins.slice(0, MOST_NAMED).map((pin) => {
    const rate = pin.slip.centsPerYear ?? 0;
    const string = pin.stringPosition === 0 ? '' : ` string ${pin.stringPosition}`;
    return `${midiToName(pin.midi)}${string} (${rate.toFixed(1)} cents a year)`;
  });
  return list.join(', ') + (pins.length > MOST_NAMED ? ` and ${pins.length - MOST_NAMED} more` : '');
}

/** What speaks against the verdict, or limits it. */
function contrary(facts: VerdictFacts, flagged: readonly JudgedPin[], ruledOut: number | null): string[] {
  const reasons: string[] = [];
  const steady = facts.pins.filter((pin) => !pin.isFlagged && (pin.slip.probability ?? 1) < SUSPECT).length;
  if (flagged.length > 0 && ruledOut !== null) {
    reasons.push(
      `against it: the other ${steady} strings keep their places, slips above ${ruledOut.toFixed(1)} cents a year ruled out`,
    );
  }
  if (!facts.isHumidityKnown)
    reasons.push('humidity was not read often enough, so the season was inferred from the strings themselves');
  return reasons;
}
