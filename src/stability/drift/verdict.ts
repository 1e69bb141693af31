/** What the evidence says of the pin block, in one of four states, with reasons for and against. */
import type { ChangeInterval } from './changeRows.ts';
import type { JudgedPin } from './judgedPin.ts';
import { median, normalBelow } from './statistics.ts';
import { type GroundPin, groundSentence, type VerdictGround } from './verdictGrounds.ts';
import type { Zone } from './zoneScan.ts';

export type VerdictState = 'holding' | 'watch' | 'giving way' | 'not enough evidence';

export type Verdict = {
  readonly state: VerdictState;
  readonly grounds: readonly VerdictGround[];
  /** The grounds in English. */
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
/** Where fewer notes are read, what one string does cannot be told from what all of them do. */
const LEAST_NOTES = 8;
/** Holding is said where slips of this many times the threshold are ruled out. */
const HOLDING_FACTOR = 2;
/** A string likelier than this to slip is named before it is certain. */
export const SUSPECT = 0.7;

export function judgeBlock(facts: VerdictFacts): Verdict {
  const usable = facts.intervals.filter((interval) => interval.hasBaseline);
  const years = usable.reduce((sum, interval) => sum + interval.years, 0);
  const ruledOut = ruledOutAbove(facts.pins);
  const flagged = facts.pins.filter((pin) => pin.isFlagged);
  const counted: VerdictGround = { kind: 'compared', intervalCount: usable.length, years };
  const against = contrary(facts, flagged, ruledOut);
  const verdict = (state: VerdictState, grounds: readonly VerdictGround[]): Verdict => ({
    state,
    grounds,
    reasons: grounds.map(groundSentence),
    slipRuledOutAboveCentsPerYear: ruledOut,
  });
  if (facts.zones.length > 0 || flagged.length > 0) {
    const fast = flagged.filter((pin) => (pin.slip.centsPerYear ?? 0) <= -facts.thresholdCentsPerYear);
    // Against where strings are usually left, with hardly a baseline, even a fast slip is no more than a reason to look.
    const isGivingWay = (facts.zones.length > 0 || fast.length > 0) && usable.length >= LEAST_INTERVALS;
    const state = isGivingWay ? 'giving way' : 'watch';
    const zones = facts.zones.map((zone): VerdictGround => ({ ...zoneOf(zone), kind: 'zone-slips' }));
    return verdict(state, [...zones, ...alone(flagged, facts.zones), counted, ...against]);
  }
  if (usable.length < LEAST_INTERVALS || years < LEAST_YEARS || ruledOut === null)
    return verdict('not enough evidence', [missingEvidence(usable.length, years), counted]);
  const noteCount = new Set(facts.pins.map(({ midi }) => midi)).size;
  if (noteCount < LEAST_NOTES) return verdict('not enough evidence', [{ kind: 'few-notes', noteCount }, counted]);
  const suspects = facts.pins.filter((pin) => (pin.slip.probability ?? 0) > SUSPECT);
  if (suspects.length > 0)
    return verdict('watch', [{ kind: 'pins-suspected', pins: suspects.map(groundPin) }, counted, ...against]);
  const most = HOLDING_FACTOR * facts.thresholdCentsPerYear;
  const spoken = ruledOut <= most ? { open: [], others: ruledOut } : withFewOpen(facts.pins, most);
  if (!spoken)
    return verdict('not enough evidence', [{ kind: 'slip-could-hide', ruledOutCentsPerYear: ruledOut }, counted]);
  const { open, others } = spoken;
  const except: VerdictGround[] = open.length === 0 ? [] : [{ kind: 'pins-open', pins: open.map(groundPin) }];
  return {
    ...verdict('holding', [{ kind: 'no-string-slips', ruledOutCentsPerYear: others }, counted, ...except, ...against]),
    slipRuledOutAboveCentsPerYear: others,
  };
}

/** A block holds where this share of its strings, one at least, cannot be spoken for yet: they are named. */
const OPEN_SHARE = 0.01;

/** The fewest strings, the likeliest to slip first, without which slips faster than `most` are ruled out; undefined where they are too many. */
function withFewOpen(pins: readonly JudgedPin[], most: number): { open: JudgedPin[]; others: number } | undefined {
  const byDoubt = [...pins].sort((a, b) => (b.slip.probability ?? 0) - (a.slip.probability ?? 0));
  const mostOpen = Math.max(1, Math.floor(OPEN_SHARE * pins.length));
  for (let count = 1; count <= mostOpen; count++) {
    const others = ruledOutAbove(byDoubt.slice(count));
    if (others !== null && others <= most) return { open: byDoubt.slice(0, count), others };
  }
  return undefined;
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

function missingEvidence(count: number, years: number): VerdictGround {
  if (count === 0) return { kind: 'never-compared' };
  if (count < LEAST_INTERVALS) return { kind: 'has-to-repeat', visitCount: Math.max(1, LEAST_INTERVALS - count) };
  return { kind: 'too-short', years };
}

function zoneOf({ fromMidi, toMidi, centsPerYear, isAccelerating }: Zone) {
  return { fromMidi, toMidi, centsPerYear, isAccelerating };
}

function groundPin({ midi, stringPosition, slip }: JudgedPin): GroundPin {
  return { midi, stringPosition, centsPerYear: slip.centsPerYear ?? 0 };
}

/** Flagged pins outside the zones. */
function alone(flagged: readonly JudgedPin[], zones: readonly Zone[]): VerdictGround[] {
  const pins = flagged.filter((pin) => !zones.some((zone) => pin.midi >= zone.fromMidi && pin.midi <= zone.toMidi));
  return pins.length === 0 ? [] : [{ kind: 'pins-slip', pins: pins.map(groundPin) }];
}

/** What speaks against the verdict, or limits it. */
function contrary(facts: VerdictFacts, flagged: readonly JudgedPin[], ruledOut: number | null): VerdictGround[] {
  const grounds: VerdictGround[] = [];
  const stringCount = facts.pins.filter((pin) => !pin.isFlagged && (pin.slip.probability ?? 1) < SUSPECT).length;
  if (flagged.length > 0 && ruledOut !== null)
    grounds.push({ kind: 'others-steady', stringCount, ruledOutCentsPerYear: ruledOut });
  if (!facts.isHumidityKnown) grounds.push({ kind: 'season-inferred' });
  return grounds;
}
