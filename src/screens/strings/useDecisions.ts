import { useRef, useState } from 'react';
import type { DecisionId, InstrumentId } from '../../piano/ids.ts';
import type { DecisionChoice } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure, WriteOutcome } from '../../records/writeOutcome.ts';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import type { WriteFaultValue } from '../../ui/WriteFault.tsx';
import { type DecisionStep, decisionStep, joined, type Undoing } from './decisionSteps.ts';
import { type DeskRow, decisionByString } from './deskRows.ts';

const words = texts.strings.desk;

export type Decisions = {
  /** What was done last, for eyes and screen readers. */
  readonly message: string;
  readonly fault: WriteFaultValue | null;
  readonly decide: (rows: readonly DeskRow[], choice: DecisionChoice) => void;
  /** Each row what is suggested for it. */
  readonly takeSuggestions: (rows: readonly DeskRow[]) => void;
  readonly clear: (rows: readonly DeskRow[]) => void;
  readonly undo: () => void;
};

type TakeBack = () => Promise<WriteFailure | null>;

/** Writes decisions one step after the other, and remembers how each is taken back. */
export function useDecisions(records: Records, instrumentId: InstrumentId): Decisions {
  const [message, setMessage] = useState('');
  const [fault, setFault] = useState<WriteFaultValue | null>(null);
  const queue = useRef<Promise<void>>(Promise.resolve());
  const undoSteps = useRef<TakeBack[]>([]);
  const enqueue = (job: () => Promise<void>) => {
    queue.current = queue.current.then(job);
  };
  const write = (rows: readonly DeskRow[], stepOf: (row: DeskRow) => DecisionStep, told: string) =>
    enqueue(async () => {
      const { written, undoing } = joined((await standing(records, instrumentId, rows)).map(stepOf));
      const outcome = await records.saveDecisions(written);
      setFault(outcome.written ? null : outcome);
      if (!outcome.written) return;
      undoSteps.current.push(() => takeBack(records, undoing));
      setMessage(told);
    });
  const deciding = () => ({ instrumentId, today: todayIso(), newId: () => newId<DecisionId>() });
  const decide = (rows: readonly DeskRow[], choice: DecisionChoice) => {
    const told = words.decided(namesOf(rows), texts.strings.choices[choice]);
    write(rows, (row) => decisionStep(row, choice, deciding()), told);
  };
  const takeSuggestions = (rows: readonly DeskRow[]) => {
    const choices = [...new Set(rows.map(({ suggestion }) => texts.strings.choices[suggestion.choice]))];
    const told = words.decided(namesOf(rows), choices.join(', '));
    write(rows, (row) => decisionStep(row, row.suggestion.choice, deciding()), told);
  };
  const clear = (rows: readonly DeskRow[]) => {
    enqueue(async () => {
      const ids = (await standing(records, instrumentId, rows)).flatMap(({ decision }) => decision?.id ?? []);
      if (ids.length === 0) return;
      const outcome = await records.deleteRows(ids.map((id) => ({ table: 'decisions' as const, id })));
      setFault(outcome.written ? null : outcome);
      if (!outcome.written) return;
      undoSteps.current.push(async () => failureOf(await records.restore(outcome.deletionIds)));
      setMessage(words.cleared(namesOf(rows)));
    });
  };
  const undo = () =>
    enqueue(async () => {
      const last = undoSteps.current.pop();
      if (!last) return setMessage(words.nothingToUndo);
      const failure = await last();
      setFault(failure);
      if (!failure) setMessage(words.undone);
    });
  return { message, fault, decide, takeSuggestions, clear, undo };
}

/** The rows with the decisions of this moment: keys may come faster than the page is drawn. */
async function standing(records: Records, instrumentId: InstrumentId, rows: readonly DeskRow[]): Promise<DeskRow[]> {
  const current = decisionByString(await records.decisionsOf(instrumentId));
  return rows.map((row) => ({ ...row, decision: current.get(row.key) ?? null }));
}

async function takeBack(records: Records, { restored, added }: Undoing): Promise<WriteFailure | null> {
  if (restored.length > 0) {
    const failure = failureOf(await records.saveDecisions(restored));
    if (failure) return failure;
  }
  if (added.length === 0) return null;
  return failureOf(await records.deleteRows(added.map((id) => ({ table: 'decisions' as const, id }))));
}

function failureOf(outcome: WriteOutcome): WriteFailure | null {
  return outcome.written ? null : outcome;
}

/** More names than this are counted instead. */
const MOST_NAMED = 3;

function namesOf(rows: readonly DeskRow[]): string {
  return rows.length > MOST_NAMED ? words.many(rows.length) : rows.map(({ name }) => name).join('; ');
}
