/** Decisions as the records take them: what a choice writes, and how it is taken back. */
import type { DecisionId, InstrumentId } from '../../piano/ids.ts';
import type { DecisionChoice, StringDecision } from '../../piano/stringingRecords.ts';
import { type DeskRow, reasonText } from './deskRows.ts';

/** How one step is taken back: rows as they were, and rows that were not there before. */
export type Undoing = { readonly restored: readonly StringDecision[]; readonly added: readonly DecisionId[] };

export type DecisionStep = { readonly written: readonly StringDecision[]; readonly undoing: Undoing };

type Deciding = {
  readonly instrumentId: InstrumentId;
  /** Calendar date. */
  readonly today: string;
  readonly newId: () => DecisionId;
};

type Decided = Pick<DeskRow, 'place' | 'decision' | 'suggestion'>;

/**
 * Today's own decision is changed while it is not done; an older one, or one that was carried out, stays as history. The reason is that of
 * the suggestion where it is followed, else it is left for the person to write.
 */
export function decisionStep(
  { place, decision, suggestion }: Decided,
  choice: DecisionChoice,
  deciding: Deciding,
): DecisionStep {
  const { instrumentId, today } = deciding;
  const before = decision && decision.decidedOn === today && decision.doneOn === null ? decision : null;
  const id = before?.id ?? deciding.newId();
  const reason = suggestion.choice === choice ? reasonText(suggestion) : '';
  const written = { id, instrumentId, ...place, choice, reason, decidedOn: today, doneOn: null };
  return { written: [written], undoing: { restored: before ? [before] : [], added: before ? [] : [id] } };
}

/** Several strings decided as one step, which is taken back as one. */
export function joined(steps: readonly DecisionStep[]): DecisionStep {
  return {
    written: steps.flatMap(({ written }) => written),
    undoing: {
      restored: steps.flatMap(({ undoing }) => undoing.restored),
      added: steps.flatMap(({ undoing }) => undoing.added),
    },
  };
}
