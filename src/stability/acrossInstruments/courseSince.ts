/** How the verdict on a block went, visit by visit, since work was done on it. */
import { analyseDrift, type Drift } from '../drift/analyseDrift.ts';
import { seededNormal } from '../drift/seededNormal.ts';
import type { VerdictState } from '../drift/verdict.ts';
import type { InstrumentHistory } from '../historyOfRecords.ts';
import type { Job } from './jobs.ts';

export type StateOnDate = { readonly visitedOn: string; readonly state: VerdictState };

export type CourseRequest = {
  readonly history: Pick<InstrumentHistory, 'readings' | 'events' | 'instrument'>;
  readonly job: Pick<Job, 'doneOn' | 'range'>;
  /** Later visits are not looked at: the day on which other work replaced this. Null: none did. */
  readonly untilOn: string | null;
  readonly thresholdCentsPerYear: number;
};

/**
 * At each visit since the work, what would have been said that day: from the readings since the work up to that visit. Once it is
 * `giving way` nothing later is asked but the last visit. For work on some notes, only what was found among them counts.
 * @param onVisit is told how many of the visits are done
 * @param seed of the judgement's chance level; the same seed, the same course
 */
export function courseSince(
  { history, job, untilOn, thresholdCentsPerYear }: CourseRequest,
  seed: number,
  onVisit: (doneCount: number, allCount: number) => void = () => undefined,
): StateOnDate[] {
  const isWithin = (date: string) => date >= job.doneOn && (untilOn === null || date < untilOn);
  const readings = history.readings.filter(({ visitedOn }) => isWithin(visitedOn));
  const events = history.events.filter(({ happenedOn }) => isWithin(happenedOn));
  const dates = [...new Set(readings.map(({ visitedOn }) => visitedOn))].sort();
  const course: StateOnDate[] = [];
  dates.forEach((visitedOn, index) => {
    const isLast = index === dates.length - 1;
    if (isLast || course.at(-1)?.state !== 'giving way') {
      const drift = analyseDrift({
        readings: readings.filter((reading) => reading.visitedOn <= visitedOn),
        events: events.filter(({ happenedOn }) => happenedOn <= visitedOn),
        instrument: history.instrument,
        thresholdCentsPerYear,
        random: seededNormal(seed),
      });
      course.push({ visitedOn, state: stateWithin(drift, job.range, thresholdCentsPerYear) });
    }
    onVisit(index + 1, dates.length);
  });
  return course;
}

/** What the judgement says of some of the notes: the whole verdict where that is what is asked. */
export function stateWithin(drift: Drift, range: Job['range'], thresholdCentsPerYear: number): VerdictState {
  const { state } = drift.verdict;
  if (range === null) return state;
  const flagged = drift.pins.filter((pin) => pin.isFlagged && pin.midi >= range.fromMidi && pin.midi <= range.toMidi);
  const isZoneHere = drift.zones.some((zone) => zone.fromMidi <= range.toMidi && zone.toMidi >= range.fromMidi);
  const isFast = flagged.some((pin) => (pin.slip.centsPerYear ?? 0) <= -thresholdCentsPerYear);
  if (isZoneHere || isFast) return 'giving way';
  if (flagged.length > 0) return 'watch';
  return state === 'not enough evidence' ? state : 'holding';
}
