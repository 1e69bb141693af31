/**
 * What something done to a string changed: its takes before and after, partial by partial, and what that points to.
 *
 * The takes are of one string alone, its neighbours muted, struck alike. A difference is told only where it is more than strikes
 * differ by; repeated takes say what that is. What a change points to is common practice, and practitioners disagree: pressing a bridge
 * pin that is not loose can make a beat stronger, and a loose one often does not beat at all.
 *
 * How often it is right over many synthetic strings stands in the bench's table `trials`. Real strings were not tried.
 */
import type { NoteReading } from '../../piano/reading.ts';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import { comparePartial, isLoneChange, type PartialTrial } from './partialTrial.ts';
import { repeatScatter } from './strikeScatter.ts';
import { type TrialCaution, trialCautions } from './trialCautions.ts';

export type TrialTakes = {
  readonly kind: TrialKind;
  readonly before: readonly NoteReading[];
  readonly after: readonly NoteReading[];
};

export type TrialOutcome =
  /** Every beat that was there is gone. */
  | 'stops'
  | 'weaker'
  /** A beat grew, or one appeared. */
  | 'stronger'
  | 'other rate'
  /** Some partials one way, some the other. */
  | 'mixed'
  | 'no difference'
  | 'cannot tell';

export type CannotTellReason =
  /** No take that can be used on one side. */
  | 'no-usable-take'
  /** The takes are not all of one string. */
  | 'different-strings'
  /** Whole unisons: a neighbour that sounds beats too. */
  | 'not-one-string'
  /** A beat was there, and the other side's takes are too weak or short to show it. */
  | 'beat-not-assessable';

/** What it points to, by common practice. */
export type TrialFinding =
  | 'bridge pin loose'
  | 'wire not down on the bridge'
  | 'wire not seated at the other end'
  | 'curl or twist in the wire'
  | 'the trial changes it without curing it'
  | 'not this';

export type TrialResult = {
  readonly kind: TrialKind;
  readonly outcome: TrialOutcome;
  /** Null unless the outcome is 'cannot tell'. */
  readonly reason: CannotTellReason | null;
  /** Partials that beat on either side and could be judged on both, lowest first. */
  readonly partials: readonly PartialTrial[];
  readonly finding: TrialFinding | null;
  /** How much of what is heard of the beats went away, 0…1 (below 0: came): by the partials' amplitude and the beats' ratio. */
  readonly relief: number;
  readonly cautions: readonly TrialCaution[];
};

export function compareTrial({ kind, before, after }: TrialTakes): TrialResult {
  const [earlier, later] = [before.filter(canBeCompared), after.filter(canBeCompared)];
  const reason = whyNot(earlier, later);
  if (reason) return cannotTell(kind, reason, []);
  const factor = repeatScatter([earlier, later]);
  const numbers = new Set(
    [...earlier, ...later].flatMap(({ partials }) => partials.map(({ partialNumber }) => partialNumber)),
  );
  const partials = [...numbers]
    .sort((a, b) => a - b)
    .flatMap((number) => comparePartial(number, earlier, later, factor) ?? []);
  const cautions = trialCautions(kind, earlier, later, partials);
  if (partials.length === 0 && [...earlier, ...later].some(hasBeat))
    return cannotTell(kind, 'beat-not-assessable', cautions);
  const outcome = outcomeOf(isLoneChange(partials) ? partials.filter(({ change }) => change === 'none') : partials);
  return {
    kind,
    outcome,
    reason: null,
    partials,
    finding: findingOf(kind, outcome, partials),
    relief: reliefOf(partials),
    cautions,
  };
}

/** A beat in proportion to the partial number looks like a second string: such a take is looked at, and the doubt told. */
function canBeCompared({ quality }: NoteReading): boolean {
  return quality.isUsable || (quality.faults.length > 0 && quality.faults.every((fault) => fault === 'two-notes'));
}

function whyNot(before: readonly NoteReading[], after: readonly NoteReading[]): CannotTellReason | undefined {
  const [first] = before;
  if (!first || after.length === 0) return 'no-usable-take';
  const all = [...before, ...after];
  if (all.some(({ midi, stringPosition }) => midi !== first.midi || stringPosition !== first.stringPosition))
    return 'different-strings';
  return first.stringPosition === 0 ? 'not-one-string' : undefined;
}

function cannotTell(kind: TrialKind, reason: CannotTellReason, cautions: readonly TrialCaution[]): TrialResult {
  return { kind, outcome: 'cannot tell', reason, partials: [], finding: null, relief: 0, cautions };
}

function hasBeat({ partials }: NoteReading): boolean {
  return partials.some(({ beats }) => beats.length > 0);
}

function outcomeOf(partials: readonly PartialTrial[]): TrialOutcome {
  const changes = partials.map(({ change }) => change);
  const isLess = changes.some((change) => change === 'stops' || change === 'weaker');
  const isMore = changes.some((change) => change === 'stronger' || change === 'appears');
  if (isLess && isMore) return 'mixed';
  if (isMore) return 'stronger';
  if (isLess) return partials.every(({ after }) => after.rateHz === null) ? 'stops' : 'weaker';
  return changes.includes('other rate') ? 'other rate' : 'no difference';
}

const POINTS_TO: Readonly<Record<TrialKind, TrialFinding>> = {
  'hold the bridge pin': 'bridge pin loose',
  'press the wire at the bridge': 'wire not down on the bridge',
  'tap the wire to the bridge': 'wire not down on the bridge',
  'seat the wire at the other end': 'wire not seated at the other end',
  'take out its twist': 'curl or twist in the wire',
  other: 'the trial changes it without curing it',
};

/** Nothing is pointed to where there was no beat to change. */
function findingOf(kind: TrialKind, outcome: TrialOutcome, partials: readonly PartialTrial[]): TrialFinding | null {
  if (partials.length === 0) return null;
  if (outcome === 'stops' || outcome === 'weaker') return POINTS_TO[kind];
  return outcome === 'no difference' ? 'not this' : 'the trial changes it without curing it';
}

function reliefOf(partials: readonly PartialTrial[]): number {
  const loudest = Math.max(...partials.map(({ levelDbfs }) => levelDbfs));
  const weight = ({ levelDbfs }: PartialTrial) => 10 ** ((levelDbfs - loudest) / 20);
  const before = partials.reduce((sum, partial) => sum + weight(partial) * partial.before.ratio, 0);
  const after = partials.reduce((sum, partial) => sum + weight(partial) * partial.after.ratio, 0);
  return before > 0 ? 1 - after / before : 0;
}
