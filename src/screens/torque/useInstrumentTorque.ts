import { useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { type PinTorque, pinTorques } from '../../stability/torquePins.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { type PinLoads, pinLoads, presentSchedule } from './pinLoads.ts';

export type VisitPins = { readonly visit: Visit; readonly pins: readonly PinTorque[] };

export type InstrumentTorquePage = {
  readonly instrument: Instrument;
  readonly loads: PinLoads;
  /** Visits at which pins were read, the oldest first. */
  readonly read: readonly VisitPins[];
  readonly latestVisit: Visit | null;
};

export type InstrumentTorqueView = {
  readonly page: Observed<InstrumentTorquePage | null>;
  /** The visit that is shown: the latest one with readings unless another was chosen. */
  readonly shown: VisitPins | null;
  readonly before: VisitPins | null;
  readonly show: (visitId: string) => void;
};

export function useInstrumentTorque(records: Records, instrumentId: InstrumentId): InstrumentTorqueView {
  const page = useObserved<InstrumentTorquePage | null>(instrumentId, (onValue, onFault) =>
    records.observe(() => readPage(records, instrumentId), onValue, onFault),
  );
  const [visitId, show] = useState<string | null>(null);
  const read = page.state === 'ready' && page.value ? page.value.read : [];
  const chosen = read.findIndex(({ visit }) => visit.id === visitId);
  const index = chosen < 0 ? read.length - 1 : chosen;
  return { page, shown: read[index] ?? null, before: read[index - 1] ?? null, show };
}

async function readPage(records: Records, instrumentId: InstrumentId): Promise<InstrumentTorquePage | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, torques, schedules] = await Promise.all([
    records.visitsOf(instrumentId),
    records.torquesOf(instrumentId),
    records.schedulesOf(instrumentId),
  ]);
  const read = visits.flatMap((visit) => {
    const pins = pinTorques(torques.filter((reading) => reading.visitId === visit.id));
    return pins.length > 0 ? [{ visit, pins }] : [];
  });
  return {
    instrument,
    loads: pinLoads(instrument, presentSchedule(schedules)),
    read,
    latestVisit: visits.at(-1) ?? null,
  };
}
