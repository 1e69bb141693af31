/**
 * The reading that a survey's record keeps of a string: the kept take's, with the uncertainty that repeated takes support.
 *
 * The takes themselves stay as measured: their uncertainty is that of the fit, and which take is the best one is judged by it. How
 * well strikes repeat is known only to the survey, so the larger figure is derived when the survey's list of readings is made,
 * never stored with a take. Whatever compares surveys (drift, the owner's page) takes its readings from here. Only partial 1 and the offset are
 * widened: what one strike and the next differ by is common to all partials of a take.
 */
import { uncertaintyHzToCents } from '../piano/cents.ts';
import type { NoteReading } from '../piano/reading.ts';
import {
  type PooledRepeatability,
  pooledRepeatability,
  type RepeatedStrikes,
  repeatabilityCents,
  repeatedStrikes,
} from './repeatability.ts';

/** The kept take of one string beside the others of the same survey. */
export type StringTakes = { readonly kept: NoteReading; readonly others: readonly NoteReading[] };

export type RecordedString = {
  readonly reading: NoteReading;
  /** Null where no two takes can be compared. */
  readonly strikes: RepeatedStrikes | null;
  readonly repeatabilityCents: number | null;
};

export type RecordedStrings = {
  /** In the order given. */
  readonly strings: readonly RecordedString[];
  readonly pooled: readonly PooledRepeatability[];
};

/** @param strings one entry for each note and string of one survey */
export function recordedStrings(strings: readonly StringTakes[]): RecordedStrings {
  const strikes = strings.map(({ kept, others }) => repeatedStrikes(kept, others) ?? null);
  const pooled = pooledRepeatability(strikes.flatMap((one) => one ?? []));
  return {
    pooled,
    strings: strings.map(({ kept }, index) => {
      const own = strikes[index] ?? null;
      if (!own) return { reading: kept, strikes: null, repeatabilityCents: null };
      const cents = repeatabilityCents(own, pooled);
      return { reading: widened(kept, cents), strikes: own, repeatabilityCents: cents };
    }),
  };
}

/** The larger of the fit's uncertainty and the scatter between strikes. */
function widened(reading: NoteReading, scatterCents: number): NoteReading {
  const scatterHz = scatterCents / uncertaintyHzToCents(1, reading.partial1Hz);
  return {
    ...reading,
    offsetStandardUncertaintyCents: Math.max(reading.offsetStandardUncertaintyCents, scatterCents),
    partial1StandardUncertaintyHz: Math.max(reading.partial1StandardUncertaintyHz, scatterHz),
  };
}
