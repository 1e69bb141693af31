import { useEffect, useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { goTo, replaceWith } from '../../ui/routes.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import {
  type DraftFaults,
  EMPTY_DRAFT,
  type InstrumentDraft,
  instrumentToDraft,
  readDraft,
  withDraft,
} from './instrumentDraft.ts';

export type InstrumentForm = {
  /** The instrument as stored; null for a new one, undefined where it is not on this device. */
  readonly stored: Observed<Instrument | null | undefined>;
  readonly draft: InstrumentDraft;
  readonly faults: DraftFaults;
  readonly writeFault: WriteFailure | null;
  readonly set: (change: Partial<InstrumentDraft>) => void;
  readonly save: () => Promise<void>;
};

export function useInstrumentForm(records: Records, instrumentId: InstrumentId | null): InstrumentForm {
  const stored = useObserved<Instrument | null | undefined>(instrumentId ?? 'new', (onValue, onFault) =>
    records.observe(async () => (instrumentId === null ? null : records.instrument(instrumentId)), onValue, onFault),
  );
  const [draft, setDraft] = useState<InstrumentDraft>(EMPTY_DRAFT);
  const [faults, setFaults] = useState<DraftFaults>({});
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const instrument = stored.state === 'ready' ? stored.value : undefined;
  useEffect(() => {
    if (instrument) setDraft(instrumentToDraft(instrument));
  }, [instrument]);
  const save = async () => {
    const read = readDraft(draft);
    setFaults(read.isSound ? {} : read.faults);
    if (!read.isSound) return;
    const id = instrument?.id ?? newId<InstrumentId>();
    const edited = instrument
      ? withDraft(instrument, read.instrument)
      : { ...read.instrument, id, isDemonstration: false };
    const outcome = await records.saveInstrument(edited);
    if (!outcome.written) setWriteFault(outcome);
    else if (instrument) goTo({ screen: 'instrument', instrumentId: id });
    else replaceWith({ screen: 'instrument', instrumentId: id });
  };
  const set = (change: Partial<InstrumentDraft>) => {
    setDraft((before) => ({ ...before, ...change }));
    setFaults((before) => Object.fromEntries(Object.entries(before).filter(([field]) => !(field in change))));
  };
  return { stored, draft, faults, writeFault, set, save };
}
