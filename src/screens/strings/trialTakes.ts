/** A string's trials as the judging wants them: with the readings of their takes. */
import type { TakeId } from '../../piano/ids.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { BridgeTrial, StringDecision } from '../../piano/stringingRecords.ts';
import { concludeTrials, type TrialConclusion } from '../../stringing/trials/concludeTrials.ts';
import { isSameString, keyOf, type StringPlace } from './stringKey.ts';
import type { StringTake } from './stringReadings.ts';

export type ConcludedTrials = {
  /** In the order tried, as the conclusion's results. */
  readonly trials: readonly BridgeTrial[];
  readonly conclusion: TrialConclusion;
};

/** By string. Takes that are not there any more count as if they had not been recorded. */
export function concludedTrials(
  trials: readonly BridgeTrial[],
  takes: readonly StringTake[],
): ReadonlyMap<string, ConcludedTrials> {
  const readings = new Map<TakeId, NoteReading>(takes.map(({ take }) => [take.id, take.reading]));
  const read = (ids: readonly TakeId[]) => ids.flatMap((id) => readings.get(id) ?? []);
  const byString = new Map<string, BridgeTrial[]>();
  for (const trial of [...trials].sort((a, b) => a.triedAt.localeCompare(b.triedAt)))
    byString.set(keyOf(trial), [...(byString.get(keyOf(trial)) ?? []), trial]);
  return new Map(
    [...byString].map(([key, own]) => {
      const judged = own.map(({ kind, takesBefore, takesAfter }) => ({
        kind,
        before: read(takesBefore),
        after: read(takesAfter),
      }));
      return [key, { trials: own, conclusion: concludeTrials(judged) }];
    }),
  );
}

/** Trials that still say something of the string as it is: those since the last work on it that was done. */
export function standingTrials(
  trials: readonly BridgeTrial[],
  decisions: readonly StringDecision[],
  place: StringPlace,
): BridgeTrial[] {
  const done = decisions
    .filter((decision) => isSameString(decision, place) && decision.choice !== 'leave')
    .flatMap(({ doneOn }) => doneOn ?? []);
  const lastDone = done.sort().at(-1) ?? '';
  return trials.filter((trial) => isSameString(trial, place) && trial.triedAt.slice(0, 10) > lastDone);
}
