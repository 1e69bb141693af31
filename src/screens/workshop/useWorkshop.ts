import { useState } from 'react';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import { DEMONSTRATION_BEGUN } from '../../records/demonstrationRows.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { texts } from '../../ui/texts.ts';
import { offerUndo, withdrawUndo } from '../../ui/undoOffer.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type InstrumentSummary = {
  readonly instrument: Instrument;
  readonly lastVisit: Visit | null;
  readonly visitCount: number;
};

export type Workshop = {
  readonly instruments: Observed<InstrumentSummary[]>;
  /** True where setting the demonstration up was interrupted, or goes on in another page. */
  readonly isUnfinished: boolean;
  /** From 0 to 1 while the demonstration is being set up, else null. */
  readonly installingShare: number | null;
  readonly fault: WriteFailure | null;
  readonly install: () => Promise<void>;
  readonly remove: () => Promise<void>;
};

export function useWorkshop(records: Records): Workshop {
  const instruments = useObserved<InstrumentSummary[]>('workshop', (onValue, onFault) =>
    records.observe(() => summaries(records), onValue, onFault),
  );
  const begun = useObserved<unknown>('demonstration', (onValue, onFault) =>
    records.observe(() => records.setting(DEMONSTRATION_BEGUN), onValue, onFault),
  );
  const [installingShare, setInstallingShare] = useState<number | null>(null);
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const install = async () => {
    setInstallingShare(0);
    withdrawUndo('demonstration');
    const { installDemonstration } = await import('../../records/demonstration/installDemonstration.ts');
    await nextPicture();
    const outcome = await installDemonstration(records, setInstallingShare);
    setInstallingShare(null);
    setFault(outcome.written ? null : outcome);
  };
  const remove = async () => {
    const outcome = await records.removeDemonstration();
    setFault(outcome.written ? null : outcome);
    if (!outcome.written) return;
    offerUndo({ message: texts.workshop.demonstration.removed, undo: install, subject: 'demonstration' });
  };
  const isUnfinished = begun.state === 'ready' && begun.value === true;
  return { instruments, isUnfinished, installingShare, fault, install, remove };
}

async function summaries(records: Records): Promise<InstrumentSummary[]> {
  const instruments = await records.listInstruments();
  return Promise.all(
    instruments.map(async (instrument) => {
      const visits = await records.visitsOf(instrument.id);
      return { instrument, lastVisit: visits.at(-1) ?? null, visitCount: visits.length };
    }),
  );
}

/** Lets the browser paint before work that keeps it busy. */
function nextPicture(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 50));
}
