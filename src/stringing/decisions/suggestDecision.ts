/**
 * What to do with a string, from what is known of it: a suggestion with its reasons, for a person to take or leave. The rules are
 * common practice and cautious: wire is replaced for what lies in the wire, bridges are worked on for what a trial at the bridge showed.
 */
import type { DecisionChoice } from '../../piano/stringingRecords.ts';
import type { FalseBeat } from '../falseBeats/falseBeatList.ts';
import { VERY_HIGH_SHARE } from '../scale/scaleCautions.ts';
import type { TrialFinding } from '../trials/compareTrial.ts';
import type { TrialConclusion } from '../trials/concludeTrials.ts';
import type { DiameterJudgement } from '../wireCheck/diameterFromB.ts';

export type StringFacts = {
  /** Null: recorded, and no beat was heard. Undefined: not recorded. */
  readonly falseBeat?: FalseBeat | null;
  readonly trials?: TrialConclusion;
  readonly diameter?: DiameterJudgement;
  /** Stress over strength of the planned wire. */
  readonly breakingShare?: number | null;
  /** The pin slips by itself, or its torque does not hold its string. */
  readonly pinFails?: boolean;
};

export type DecisionReason =
  | 'not-recorded'
  | 'no-false-beat'
  | 'false-beat-hardly-heard'
  | 'false-beat-without-trial'
  | 'trials-cannot-tell'
  | 'bridge-pin-loose'
  | 'wire-not-down'
  | 'wire-not-seated'
  | 'wire-curled'
  | 'no-trial-helps'
  | 'wire-does-not-fit'
  | 'wire-over-stressed'
  | 'pin-fails';

export type Suggestion = { readonly choice: DecisionChoice; readonly reasons: readonly DecisionReason[] };

/** Lighter than this a false beat is let be. Chosen: about a partial 15 dB down with a beat of 6 dB, or a loud one of half a beat in its life. */
export const HARDLY_HEARD_WEIGHT = 0.04;

export function suggestDecision(facts: StringFacts): Suggestion {
  const pin: DecisionReason[] = facts.pinFails === true ? ['pin-fails'] : [];
  const wire = wireReasons(facts);
  const beat = beatSuggestion(facts);
  if (wire.length > 0) return { choice: 'replace wire', reasons: [...wire, ...pin, ...beat.reasons] };
  if (pin.length > 0) return { choice: 'replace pin', reasons: [...pin, ...beat.reasons] };
  return beat;
}

function wireReasons({ diameter, breakingShare }: StringFacts): DecisionReason[] {
  const reasons: DecisionReason[] = [];
  if (diameter?.verdict === 'does-not-fit') reasons.push('wire-does-not-fit');
  if (breakingShare != null && breakingShare >= VERY_HIGH_SHARE) reasons.push('wire-over-stressed');
  return reasons;
}

function beatSuggestion({ falseBeat, trials }: StringFacts): Suggestion {
  if (falseBeat === undefined) return { choice: 'look again', reasons: ['not-recorded'] };
  if (falseBeat === null) return { choice: 'leave', reasons: ['no-false-beat'] };
  if (falseBeat.weight < HARDLY_HEARD_WEIGHT) return { choice: 'leave', reasons: ['false-beat-hardly-heard'] };
  if (!trials || trials.results.length === 0) return { choice: 'look again', reasons: ['false-beat-without-trial'] };
  if (trials.named?.finding) return FROM_FINDING[trials.named.finding];
  if (trials.kind === 'no trial helps') return { choice: 'replace wire', reasons: ['no-trial-helps'] };
  return { choice: 'look again', reasons: ['trials-cannot-tell'] };
}

const FROM_FINDING: Readonly<Record<TrialFinding, Suggestion>> = {
  'bridge pin loose': { choice: 'bridge work', reasons: ['bridge-pin-loose'] },
  'wire not down on the bridge': { choice: 'bridge work', reasons: ['wire-not-down'] },
  'wire not seated at the other end': { choice: 'look again', reasons: ['wire-not-seated'] },
  'curl or twist in the wire': { choice: 'replace wire', reasons: ['wire-curled'] },
  'the trial changes it without curing it': { choice: 'look again', reasons: ['trials-cannot-tell'] },
  'not this': { choice: 'look again', reasons: ['trials-cannot-tell'] },
};
