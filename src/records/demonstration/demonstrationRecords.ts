/**
 * The invented workshop as plain data, one record set for each instrument. Everything comes from a seed and the plans: the same
 * seed gives the same records, ids included.
 */
import type { EventId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { RecordSet } from '../recordSet.ts';
import { inventVisits } from './inventVisits.ts';
import { INSTRUMENT_PLANS, type InstrumentPlan } from './plans.ts';
import { type SeededNumbers, seededNumbers } from './seededNumbers.ts';

/** @throws {RangeError} if the seed is not a whole number */
export function demonstrationRecords(seed: number): RecordSet[] {
  const numbers = seededNumbers(seed);
  return INSTRUMENT_PLANS.map((plan) => inventedInstrument(plan, numbers));
}

function inventedInstrument(plan: InstrumentPlan, numbers: SeededNumbers): RecordSet {
  const instrument: Instrument = { id: numbers.id(), isDemonstration: true, ...plan.instrument };
  const events = plan.events.map((event) => ({ id: numbers.id<EventId>(), instrumentId: instrument.id, ...event }));
  return { instruments: [instrument], events, ...inventVisits(plan, instrument, numbers) };
}
