/** Decisions as the bench works through them: one kind of work after the other, each from the lowest note up. */
import type { DecisionChoice, StringDecision } from '../../piano/stringingRecords.ts';

export type WorkGroup = {
  readonly choice: DecisionChoice;
  /** By note, then string from the left. */
  readonly open: readonly StringDecision[];
  /** The newest first. */
  readonly done: readonly StringDecision[];
};

/**
 * Common practice: what has to be heard again first, since it may become any other work; then pins, bridges while the wire is off or
 * slack, and wire last. What is left alone comes at the end, for the record.
 */
const ORDER: readonly DecisionChoice[] = ['look again', 'replace pin', 'bridge work', 'replace wire', 'leave'];

/** Groups that hold something. Where a string has several decisions the newest counts, and its older ones are history. */
export function workList(decisions: readonly StringDecision[]): WorkGroup[] {
  const current = currentDecisions(decisions);
  return ORDER.map((choice) => {
    const own = current.filter((decision) => decision.choice === choice);
    return {
      choice,
      open: own.filter(({ doneOn }) => doneOn === null).sort(byString),
      done: own
        .filter(({ doneOn }) => doneOn !== null)
        .sort((a, b) => (b.doneOn ?? '').localeCompare(a.doneOn ?? '') || byString(a, b)),
    };
  }).filter(({ open, done }) => open.length + done.length > 0);
}

/** The newest decision of every string; of two on one day the later in the list. */
export function currentDecisions(decisions: readonly StringDecision[]): StringDecision[] {
  const newest = new Map<string, StringDecision>();
  for (const decision of decisions) {
    const key = `${decision.midi}/${decision.stringPosition}`;
    const other = newest.get(key);
    if (!other || decision.decidedOn >= other.decidedOn) newest.set(key, decision);
  }
  return [...newest.values()].sort(byString);
}

function byString(a: StringDecision, b: StringDecision): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}
