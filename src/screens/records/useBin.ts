import { useState } from 'react';
import type { BinEntry } from '../../records/bin.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { texts } from '../../ui/texts.ts';
import { offerUndo } from '../../ui/undoOffer.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

const words = texts.records.bin;

export type Bin = {
  readonly entries: Observed<BinEntry[]>;
  readonly isBusy: boolean;
  readonly fault: WriteFailure | null;
  /** What was done last. */
  readonly message: string;
  readonly restore: (entries: readonly BinEntry[]) => Promise<void>;
  readonly purge: (entries: readonly BinEntry[]) => Promise<void>;
};

export function useBin(records: Records): Bin {
  const entries = useObserved<BinEntry[]>('bin', (onValue, onFault) =>
    records.observe(() => records.listBin(), onValue, onFault),
  );
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const [message, setMessage] = useState('');
  const restore = async (chosen: readonly BinEntry[]) => {
    setBusy(true);
    const outcome = await records.restore(idsOf(chosen));
    setBusy(false);
    setFault(outcome.written ? null : outcome);
    setMessage(outcome.written ? words.restored(outcome.rowCount) : '');
    if (outcome.written) offerUndo(null); // what it offers to bring back may be back already
  };
  const purge = async (chosen: readonly BinEntry[]) => {
    setBusy(true);
    const outcome = await records.purge(idsOf(chosen));
    setBusy(false);
    setFault(outcome.written ? null : outcome);
    const leftCount = outcome.written ? (await records.listBin()).length : 0;
    setMessage(!outcome.written ? '' : leftCount === 0 ? words.purged : words.left(leftCount));
  };
  return { entries, isBusy, fault, message, restore, purge };
}

function idsOf(entries: readonly BinEntry[]): string[] {
  return entries.map((entry) => entry.deletionId);
}
