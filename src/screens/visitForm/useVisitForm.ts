import { useEffect, useState } from 'react';
import type { InstrumentId, VisitId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { goTo, replaceWith } from '../../ui/routes.ts';
import { todayIso } from '../../ui/today.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { emptyVisitDraft, readVisit, type VisitDraft, type VisitFaults, visitToDraft } from './visitDraft.ts';

/** A new visit of an instrument, or a visit that is there already. */
export type VisitSubject = { readonly instrumentId: InstrumentId } | { readonly visitId: VisitId };
export type StoredVisit = {
  readonly instrument: Instrument;
  readonly visit: Visit | null;
  readonly lastVisit: Visit | null;
};

export type VisitForm = {
  readonly stored: Observed<StoredVisit | null>;
  readonly draft: VisitDraft;
  readonly faults: VisitFaults;
  readonly writeFault: WriteFailure | null;
  readonly set: (change: Partial<VisitDraft>) => void;
  readonly save: () => Promise<void>;
};

export function useVisitForm(records: Records, subject: VisitSubject): VisitForm {
  const key = 'visitId' in subject ? subject.visitId : `new ${subject.instrumentId}`;
  const stored = useObserved<StoredVisit | null>(key, (onValue, onFault) =>
    records.observe(() => readStored(records, subject), onValue, onFault),
  );
  const [draft, setDraft] = useState(() => emptyVisitDraft(todayIso(), null));
  const [faults, setFaults] = useState<VisitFaults>({});
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const value = stored.state === 'ready' ? stored.value : null;
  useEffect(() => {
    if (value) setDraft(value.visit ? visitToDraft(value.visit) : emptyVisitDraft(todayIso(), value.lastVisit));
  }, [value]);
  const save = async () => {
    const read = readVisit(draft);
    setFaults(read.isSound ? {} : read.faults);
    if (!read.isSound || !value) return;
    const id = value.visit?.id ?? newId<VisitId>();
    const outcome = await records.saveVisit({ ...read.visit, id, instrumentId: value.instrument.id });
    if (!outcome.written) setWriteFault(outcome);
    else if (value.visit) goTo({ screen: 'visit', visitId: id });
    else replaceWith({ screen: 'visit', visitId: id });
  };
  const set = (change: Partial<VisitDraft>) => {
    setDraft((before) => ({ ...before, ...change }));
    setFaults((before) => Object.fromEntries(Object.entries(before).filter(([field]) => !(field in change))));
  };
  return { stored, draft, faults, writeFault, set, save };
}

async function readStored(records: Records, subject: VisitSubject): Promise<StoredVisit | null> {
  const visit = 'visitId' in subject ? await records.visit(subject.visitId) : null;
  if (visit === undefined) return null;
  const instrumentId = 'visitId' in subject ? visit?.instrumentId : subject.instrumentId;
  const instrument = instrumentId && (await records.instrument(instrumentId));
  if (!instrument) return null;
  const visits = await records.visitsOf(instrument.id);
  return { instrument, visit, lastVisit: visits.at(-1) ?? null };
}
