import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { failingPins } from './failingPins.ts';
import { type BenchOfStrings, type StringRecords, stringTakes } from './stringReadings.ts';

/** Null: there is no such instrument. */
export function useStringRecords(records: Records, instrumentId: InstrumentId): Observed<StringRecords | null> {
  return useObserved<StringRecords | null>(`strings ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readStrings(records, instrumentId), onValue, onFault),
  );
}

/** By itself, since it changes with every decision and the readings do not. */
export function useBenchOfStrings(records: Records, instrumentId: InstrumentId): Observed<BenchOfStrings> {
  return useObserved<BenchOfStrings>(`bench ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readBench(records, instrumentId), onValue, onFault),
  );
}

async function readStrings(records: Records, instrumentId: InstrumentId): Promise<StringRecords | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events, kept, sounds, torques, schedules] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
    records.keptTakesOfInstrument(instrumentId),
    records.soundSizes(),
    records.torquesOf(instrumentId),
    records.schedulesOf(instrumentId),
  ]);
  const singles = surveys.filter(({ strings }) => strings === 'single strings');
  const ofSingles = await Promise.all(singles.map(({ id }) => records.takesOfSurvey(id)));
  const isSingle = new Set(singles.map(({ id }) => id));
  const takes = [...kept.filter(({ surveyId }) => !isSingle.has(surveyId)), ...ofSingles.flat()];
  return {
    instrument,
    visits,
    surveys,
    events,
    takes: stringTakes(takes, surveys, visits),
    withSound: new Set(sounds.takeIds),
    failingPins: failingPins({ instrument, visits, torques, schedules }),
  };
}

async function readBench(records: Records, instrumentId: InstrumentId): Promise<BenchOfStrings> {
  const [decisions, trials] = await Promise.all([records.decisionsOf(instrumentId), records.trialsOf(instrumentId)]);
  return { decisions, trials };
}
