import { useEffect, useRef, useState } from 'react';
import type { SurveyId, TakeId } from '../piano/ids.ts';
import type { Take } from '../piano/instrument.ts';
import type { NoteReading } from '../piano/reading.ts';
import type { Records } from '../records/records.ts';
import type { WriteFailure, WriteOutcome } from '../records/writeOutcome.ts';
import { bestTakeIndex } from '../survey/takeChoice.ts';
import { heldTakes, holdTake, releaseTake } from './heldTakes.ts';

/** `storing` until the records have answered. A take without an entry came from the records. */
export type WriteStates = ReadonlyMap<TakeId, 'storing' | 'stored' | 'not-stored'>;

/** What the player changed of a take that is stored. */
export type RecordStep =
  | { readonly kind: 'change-note'; readonly takeId: TakeId; readonly reading: NoteReading }
  | { readonly kind: 'set-kept'; readonly takeId: TakeId; readonly isKept: boolean };

export type TakeStore = {
  readonly writes: WriteStates;
  readonly fault: WriteFailure | null;
  /** Takes that are not in the records yet; they stay in memory until they are. */
  readonly unstoredCount: number;
  /** @param onStored called when the take is in the records */
  readonly store: (take: Take, onStored?: () => void) => void;
  readonly follow: (steps: readonly RecordStep[]) => void;
  /** Tries again to store what could not be stored. */
  readonly retry: () => void;
  /** Resolves when every write asked for until now has been answered. */
  readonly settled: () => Promise<void>;
};

/** Writes takes and changes one after the other, in the order in which they were asked for, and says what became of each. */
export function useTakeStore(records: Records, surveyId: SurveyId): TakeStore {
  const [writes, setWrites] = useState<WriteStates>(
    () => new Map(heldTakes(surveyId).map(({ id }) => [id, 'not-stored'])),
  );
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const [unstored, setUnstored] = useState(() => heldTakes(surveyId));
  const queue = useRef<Promise<void>>(Promise.resolve());
  const enqueue = (job: () => Promise<void>) => {
    queue.current = queue.current.then(job);
  };
  const setWrite = (id: TakeId, write: 'storing' | 'stored' | 'not-stored') =>
    setWrites((before) => new Map(before).set(id, write));
  const report = (outcome: WriteOutcome) => setFault(outcome.written ? null : outcome);
  const store = (take: Take, onStored?: () => void) => {
    setWrite(take.id, 'storing');
    enqueue(async () => {
      const outcome = await records.keepTake(take, { isBetter });
      setWrite(take.id, outcome.written ? 'stored' : 'not-stored');
      setUnstored(outcome.written ? releaseTake(take) : holdTake(take));
      report(outcome);
      if (outcome.written) onStored?.();
    });
  };
  const follow = (steps: readonly RecordStep[]) => {
    if (steps.length === 0) return;
    enqueue(async () => {
      for (const step of steps) report(await takeStep(records, step));
    });
  };
  const retry = () => {
    for (const take of unstored) store(take);
  };
  const settled = () => queue.current;
  useLeaveWarning(unstored.length > 0);
  return { writes, fault, unstoredCount: unstored.length, store, follow, retry, settled };
}

function isBetter(newcomer: Take, keptNow: Take): boolean {
  return bestTakeIndex([keptNow.reading, newcomer.reading]) === 1;
}

function takeStep(records: Records, step: RecordStep): Promise<WriteOutcome> {
  if (step.kind === 'set-kept') return records.setKept(step.takeId, step.isKept);
  return records.changeTakeNote(step.takeId, step.reading.midi, step.reading);
}

/** The browser asks before it closes a page that holds takes which are nowhere else. */
function useLeaveWarning(isWanted: boolean): void {
  useEffect(() => {
    if (!isWanted) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [isWanted]);
}
