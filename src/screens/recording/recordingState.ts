/** What the recording screen knows: the survey's book, what became of each take's write, and what the ear caught last. */
import type { WriteStates } from '../../listening/useTakeStore.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { NoNoteReason } from '../../piano/reading.ts';
import type { ItemStatus } from '../../survey/bookStates.ts';
import type { SurveyBook } from '../../survey/surveyBook.ts';
import { lastHeardTake, statusesOf } from '../../survey/surveyProgress.ts';
import type { NoteCell, NoteState } from '../../ui/noteState.ts';
import type { Heard, Storing } from './heard.ts';

/** One cell for each note. A note counts as kept only when the write of its take is confirmed. */
export function recordingCells(book: SurveyBook, writes: WriteStates): NoteCell[] {
  const byNote = new Map<number, NoteState[]>();
  for (const status of statusesOf(book)) {
    const states = byNote.get(status.item.midi) ?? [];
    byNote.set(status.item.midi, [...states, stateOf(status, writes)]);
  }
  return [...byNote].map(([midi, states]) => ({ midi, state: worstOf(states) }));
}

/** How many of the strings asked for have a good take that is in the records. */
export function storedCount(book: SurveyBook, writes: WriteStates): number {
  return statusesOf(book).filter((status) => stateOf(status, writes) === 'kept').length;
}

function stateOf({ state, keptTakeId, isSkipped }: ItemStatus, writes: WriteStates): NoteState {
  const isStored = keptTakeId !== null && (writes.get(keptTakeId) ?? 'stored') === 'stored';
  if (isStored && state !== 'missing') return state;
  return isSkipped ? 'skipped' : 'missing';
}

/** Of a note's strings, the one that needs the player most. */
function worstOf(states: readonly NoteState[]): NoteState {
  const order: readonly NoteState[] = ['missing', 'doubtful', 'skipped', 'kept'];
  return order.find((state) => states.includes(state)) ?? 'missing';
}

/** What stands large on the screen: the last note heard, or why the last sound was none. Null before the first. */
export function lastHeard(book: SurveyBook, writes: WriteStates): Heard | null {
  if (book.lastNothing) return nothingHeard(book.lastNothing.reason);
  const take = lastHeardTake(book);
  if (!take) return null;
  const { midi, offsetCents, offsetStandardUncertaintyCents, quality } = take.reading;
  return {
    takeId: take.id,
    midi,
    offsetCents,
    standardUncertaintyCents: offsetStandardUncertaintyCents,
    isUsable: quality.isUsable,
    faults: quality.faults,
    noNote: null,
    storing: storingOf(take.id, book, writes),
  };
}

function nothingHeard(reason: NoNoteReason): Heard {
  return {
    takeId: null,
    midi: null,
    offsetCents: null,
    standardUncertaintyCents: null,
    isUsable: false,
    faults: [],
    noNote: reason,
    storing: 'nothing-to-store',
  };
}

function storingOf(takeId: TakeId, book: SurveyBook, writes: WriteStates): Storing {
  const write = writes.get(takeId) ?? 'stored';
  if (write !== 'stored') return write;
  const isBest = statusesOf(book).some((status) => status.keptTakeId === takeId);
  return isBest ? 'kept' : 'set-aside';
}
