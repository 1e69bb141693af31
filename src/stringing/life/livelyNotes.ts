/**
 * How long the notes live along the compass, which die much sooner than their neighbours, and which have lost life since an earlier
 * survey.
 *
 * Along the compass: analysis/compass/lifeCurve.ts. Against an earlier survey: the log of now over then, of the same string, less what all
 * notes have in common (another room, another strike, new wire everywhere), against its robust scatter over the notes. Life times
 * differ from strike to strike by a quarter and with how well a unison is tuned, so a change is told only where it is beyond what the
 * others scatter by, and at least by a third. Common practice.
 */
import { fitLifeCurve, type LifeNote, lifeAt } from '../../analysis/compass/lifeCurve.ts';
import { beyondChance, chanceBeyond } from '../../analysis/compass/standsOut.ts';
import type { NoteReading, StringPosition } from '../../piano/reading.ts';
import { medianOf, robustScatter } from '../../piano/robustStatistics.ts';

export type LivelyNote = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly lifeTimeS: number;
  /** What the curve through the other notes says; null where there are too few notes for one. */
  readonly expectedS: number | null;
  readonly ratioToNeighbours: number | null;
  /** Lives less than half as long as its neighbours lead one to expect, beyond chance. */
  readonly isWeak: boolean;
};

export type LifeChange = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly earlierS: number;
  readonly nowS: number;
  /** Now over then: 0.5 is half as long. */
  readonly ratio: number;
  /** The same over what all notes have in common. */
  readonly ratioToCommon: number;
  readonly change: 'lost' | 'gained' | 'none';
};

export type LifeComparison =
  | {
      readonly known: true;
      /** Now over then in the middle of all notes. */
      readonly commonRatio: number;
      /** Scatter of the log of the ratio from note to note. */
      readonly scatter: number;
      /** In order of note and string. */
      readonly notes: readonly LifeChange[];
    }
  | { readonly known: false; readonly reason: 'too-few-notes' };

/** Fewer strings than this on both sides have nothing in common that could be told. Chosen, as for the curve. */
export const LEAST_COMPARED = 8;
/** A third shorter or longer: what a change has to be at least. Chosen. */
export const LEAST_CHANGE = Math.log(1.5);
const FALSE_SHARE = 0.05;
/** Strikes of one string differ by at least so much in the log of its life. Chosen. */
const LEAST_SCATTER = 0.1;

/** @param readings the kept reading of every string; those that cannot be used, or without a life time, are left out */
export function livelyNotes(readings: readonly NoteReading[]): LivelyNote[] {
  const measured = measuredLives(readings);
  const curve = fitLifeCurve(measured);
  const judged = curve?.notes ?? measured.map((note): Partial<LifeNote> & typeof note => note);
  return judged.map((note) => ({
    midi: note.midi,
    stringPosition: note.stringPosition,
    lifeTimeS: note.lifeTimeS,
    expectedS: curve ? lifeAt(curve, note.midi).lifeTimeS : null,
    ratioToNeighbours: note.ratioToCurve ?? null,
    isWeak: note.isWeak ?? false,
  }));
}

function measuredLives(readings: readonly NoteReading[]) {
  return readings.flatMap(({ midi, stringPosition, lifeTimeS, quality }) =>
    quality.isUsable && lifeTimeS !== null && lifeTimeS > 0 ? [{ midi, stringPosition, lifeTimeS }] : [],
  );
}

/** Same string against same string; an open unison is not its centre string. */
export function compareLives(earlier: readonly NoteReading[], now: readonly NoteReading[]): LifeComparison {
  const before = new Map(measuredLives(earlier).map((note) => [keyOf(note), note.lifeTimeS]));
  const pairs = measuredLives(now)
    .flatMap((note) => {
      const earlierS = before.get(keyOf(note));
      return earlierS === undefined ? [] : [{ ...note, earlierS, log: Math.log(note.lifeTimeS / earlierS) }];
    })
    .sort((a, b) => a.midi - b.midi || a.stringPosition - b.stringPosition);
  if (pairs.length < LEAST_COMPARED) return { known: false, reason: 'too-few-notes' };
  const logs = pairs.map(({ log }) => log);
  const middle = medianOf(logs);
  const scatter = Math.max(LEAST_SCATTER, robustScatter(logs, middle));
  const chances = logs.map((log) => 2 * chanceBeyond(Math.abs(log - middle) / scatter, pairs.length - 1));
  const isRare = beyondChance(chances, FALSE_SHARE);
  const notes = pairs.map(({ midi, stringPosition, earlierS, lifeTimeS: nowS, log }, index): LifeChange => {
    const own = log - middle;
    const isTold = (isRare[index] ?? false) && Math.abs(own) >= LEAST_CHANGE;
    const change = isTold ? (own < 0 ? 'lost' : 'gained') : 'none';
    return { midi, stringPosition, earlierS, nowS, ratio: Math.exp(log), ratioToCommon: Math.exp(own), change };
  });
  return { known: true, commonRatio: Math.exp(middle), scatter, notes };
}

function keyOf({ midi, stringPosition }: { readonly midi: number; readonly stringPosition: StringPosition }): number {
  return midi * 4 + stringPosition;
}
