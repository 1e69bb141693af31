/** Takes as the records hold them become the readings that a survey's record keeps. */
import type { Take } from '../piano/instrument.ts';
import { recordedStrings } from './recordedReading.ts';
import type { PooledRepeatability } from './repeatability.ts';

export type RecordedTakes = {
  /** The kept takes in the order given, each with the reading that the record keeps. The takes in the records stay as measured. */
  readonly kept: readonly Take[];
  readonly pooledRepeatability: readonly PooledRepeatability[];
};

/** @param takes all takes of one survey, kept or not: the others say how well a strike repeats */
export function recordedTakes(takes: readonly Take[]): RecordedTakes {
  const kept = takes.filter((take) => take.isKept);
  const others = takes.filter((take) => !take.isKept);
  const { strings, pooled } = recordedStrings(
    kept.map((take) => ({
      kept: take.reading,
      others: others.filter((other) => isSameString(take, other)).map(({ reading }) => reading),
    })),
  );
  const withReadings = kept.map((take, index) => ({ ...take, reading: strings[index]?.reading ?? take.reading }));
  return { kept: withReadings, pooledRepeatability: pooled };
}

function isSameString(a: Take, b: Take): boolean {
  return a.surveyId === b.surveyId && a.midi === b.midi && a.stringPosition === b.stringPosition;
}
