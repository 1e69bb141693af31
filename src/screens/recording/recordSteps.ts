/** What a step of the survey's book means for the records: which takes change their note, and which is the kept one. */
import type { RecordStep } from '../../listening/useTakeStore.ts';
import { hzToCents } from '../../piano/cents.ts';
import type { TakeId } from '../../piano/ids.ts';
import { midiToHz } from '../../piano/note.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { BookTake } from '../../survey/bookStates.ts';
import type { SurveyBook } from '../../survey/surveyBook.ts';
import { bestTakeIndex } from '../../survey/takeChoice.ts';

/** The take that the records should keep for each string: the best usable one that was not set aside. */
export function keptTakes(takes: readonly BookTake[]): Map<string, TakeId> {
  const byString = new Map<string, BookTake[]>();
  for (const take of takes) {
    if (take.isSetAside || !take.reading.quality.isUsable) continue;
    const key = stringKey(take.reading);
    byString.set(key, [...(byString.get(key) ?? []), take]);
  }
  const kept = new Map<string, TakeId>();
  for (const [key, own] of byString) {
    const best = own[bestTakeIndex(own.map((take) => take.reading)) ?? -1];
    if (best) kept.set(key, best.id);
  }
  return kept;
}

/** Steps to bring the records from one state of the book to the next, in the order in which they must be taken. */
export function recordSteps(before: SurveyBook, after: SurveyBook): RecordStep[] {
  const moved = after.takes.filter((take) => {
    const earlier = before.takes.find((candidate) => candidate.id === take.id);
    return earlier && stringKey(earlier.reading) !== stringKey(take.reading);
  });
  const keptBefore = keptTakes(before.takes);
  const keptAfter = keptTakes(after.takes);
  const movedTo = new Set(moved.map((take) => stringKey(take.reading)));
  const wanted = new Set(keptAfter.values());
  const dropped = [...keptBefore.values()].filter((id) => !wanted.has(id) && !isReplaced(id, keptBefore, keptAfter));
  // A take that moved in was given the place by the records, so there the wanted one is named again.
  const named = [...keptAfter].filter(([key, id]) => keptBefore.get(key) !== id || movedTo.has(key));
  return [
    ...moved.map(({ id, reading }): RecordStep => ({ kind: 'change-note', takeId: id, reading })),
    ...dropped.map((takeId): RecordStep => ({ kind: 'set-kept', takeId, isKept: false })),
    ...named.map(([, takeId]): RecordStep => ({ kind: 'set-kept', takeId, isKept: true })),
  ];
}

/** Naming another take for the same string sets the old one aside by itself. */
function isReplaced(id: TakeId, before: ReadonlyMap<string, TakeId>, after: ReadonlyMap<string, TakeId>): boolean {
  return [...before].some(([key, takeId]) => takeId === id && after.has(key));
}

/** The reading as one of another note: frequencies as measured, the offset counted from there. */
export function renamedReading(reading: NoteReading, midi: number): NoteReading {
  const offsetCents = hzToCents(reading.partial1Hz, midiToHz(midi, reading.pitchStandardHz));
  return { ...reading, midi, offsetCents };
}

function stringKey({ midi, stringPosition }: NoteReading): string {
  return `${midi} ${stringPosition}`;
}
