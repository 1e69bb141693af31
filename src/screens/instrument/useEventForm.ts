import { useState } from 'react';
import type { EventId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { todayIso } from '../../ui/today.ts';
import { type EventDraft, type EventFaults, readEvent } from './eventDraft.ts';

export type EventFormState = {
  readonly draft: EventDraft;
  readonly faults: EventFaults;
  readonly writeFault: WriteFailure | null;
  readonly set: (change: Partial<EventDraft>) => void;
  readonly save: () => Promise<void>;
};

export function useEventForm(records: Records, instrument: Instrument, onDone: () => void): EventFormState {
  const [draft, setDraft] = useState<EventDraft>(() => ({
    happenedOn: todayIso(),
    kind: 'restrung',
    from: '',
    to: '',
    remark: '',
  }));
  const [faults, setFaults] = useState<EventFaults>({});
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const save = async () => {
    const read = readEvent(draft, instrument.compass);
    setFaults(read.isSound ? {} : read.faults);
    if (!read.isSound) return;
    const id = newId<EventId>();
    const outcome = await records.saveEvent({ ...read.event, id, instrumentId: instrument.id });
    if (outcome.written) onDone();
    else setWriteFault(outcome);
  };
  const set = (change: Partial<EventDraft>) => {
    setDraft((before) => ({ ...before, ...change }));
    setFaults((before) => Object.fromEntries(Object.entries(before).filter(([field]) => !(field in change))));
  };
  return { draft, faults, writeFault, set, save };
}
