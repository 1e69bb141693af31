import type { VisitId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { ScheduleRow, TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { inPinOrder } from '../../stability/torquePins.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { type PinLoads, pinLoads, presentSchedule } from './pinLoads.ts';

export type VisitTorquePage = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  /** Of this visit, in pin order. */
  readonly readings: readonly TorqueReading[];
  readonly loads: PinLoads;
  readonly scheduleRows: readonly ScheduleRow[];
};

export function useVisitTorque(records: Records, visitId: VisitId): Observed<VisitTorquePage | null> {
  return useObserved<VisitTorquePage | null>(visitId, (onValue, onFault) =>
    records.observe(() => readPage(records, visitId), onValue, onFault),
  );
}

async function readPage(records: Records, visitId: VisitId): Promise<VisitTorquePage | null> {
  const visit = await records.visit(visitId);
  const instrument = visit && (await records.instrument(visit.instrumentId));
  if (!visit || !instrument) return null;
  const [torques, schedules] = await Promise.all([
    records.torquesOf(instrument.id),
    records.schedulesOf(instrument.id),
  ]);
  const schedule = presentSchedule(schedules);
  return {
    instrument,
    visit,
    readings: torques.filter((reading) => reading.visitId === visitId).sort(inPinOrder),
    loads: pinLoads(instrument, schedule),
    scheduleRows: schedule?.rows ?? [],
  };
}
