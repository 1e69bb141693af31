/**
 * The invented workshop as plain data, one record set for each instrument. Everything comes from a seed and the plans: the same
 * seed gives the same records, ids included.
 */
import type { EventId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { RecordSet } from '../recordSet.ts';
import type { BenchMorning } from './benchMorning.ts';
import { inventSchedule } from './inventSchedule.ts';
import { inventTorques } from './inventTorques.ts';
import { inventTrials } from './inventTrials.ts';
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
  const visited = inventVisits(plan, instrument, numbers);
  const whole = { instruments: [instrument], events, ...visited, ...inventBench(plan, instrument, visited.visits) };
  return plan.bench ? withTrials(whole, plan.bench, instrument) : whole;
}

/** From numbers of their own too. */
function withTrials(whole: RecordSet, bench: BenchMorning, instrument: Instrument): RecordSet {
  const numbers = seededNumbers(Number.parseInt(instrument.id.slice(24, 31), 16));
  const { surveys, takes, decisions, trials } = inventTrials(bench, whole, numbers);
  return { ...whole, surveys: [...whole.surveys, ...surveys], takes: [...whole.takes, ...takes], decisions, trials };
}

type BenchLists = Pick<RecordSet, 'torques' | 'schedules' | 'decisions' | 'trials'>;

/** From numbers of their own, so that they change nothing of the visits. */
function inventBench(plan: InstrumentPlan, instrument: Instrument, visits: readonly Visit[]): BenchLists {
  const numbers = seededNumbers(Number.parseInt(instrument.id.slice(0, 7), 16));
  return {
    torques: inventTorques(plan, instrument, visits, numbers),
    schedules: plan.scale ? [inventSchedule(plan.scale, instrument, numbers)] : [],
    decisions: [],
    trials: [],
  };
}
