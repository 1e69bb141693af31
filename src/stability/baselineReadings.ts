/** For each string the reading that its next one is compared with. */
import type { SurveyId } from '../piano/ids.ts';
import type { SurveyStage } from '../piano/instrument.ts';
import type { NoteReading } from '../piano/reading.ts';
import type { EarlierBaseline, Interval, StartedAnew } from './changeIntervals.ts';

export type BaselineReading = {
  readonly reading: NoteReading;
  readonly visitedOn: string;
  readonly stage: SurveyStage;
};

type Compared = Pick<EarlierBaseline, 'from' | 'stage' | 'surveyIds' | 'startedAnew'>;

/**
 * The newest reading of every string before an interval's end, left out where work was done on the string after it.
 * Empty where the piano was tuned after it was last read.
 * @param readingsOf what counts of these surveys: kept takes that can be used
 */
export function baselineReadings(
  { from, baseline, startedAnew, earlier }: Pick<Interval, 'from' | 'baseline' | 'startedAnew' | 'earlier'>,
  readingsOf: (surveyIds: readonly SurveyId[]) => readonly NoteReading[],
): BaselineReading[] {
  if (!baseline.known) return [];
  const newestFirst: Compared[] = [{ ...baseline, from, startedAnew }, ...earlier];
  const byString = new Map<number, BaselineReading>();
  for (const { from: visit, stage, surveyIds, startedAnew: anew } of newestFirst.reverse())
    for (const reading of readingsOf(surveyIds))
      if (!isAnew(reading.midi, anew))
        byString.set(reading.midi * 4 + reading.stringPosition, { reading, visitedOn: visit.visitedOn, stage });
  return [...byString].sort(([a], [b]) => a - b).map(([, found]) => found);
}

function isAnew(midi: number, startedAnew: readonly StartedAnew[]): boolean {
  return startedAnew.some(
    ({ fromMidi, toMidi }) =>
      midi >= (fromMidi ?? Number.NEGATIVE_INFINITY) && midi <= (toMidi ?? Number.POSITIVE_INFINITY),
  );
}
