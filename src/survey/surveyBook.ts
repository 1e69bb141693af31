/**
 * The live survey: what has been heard, what is expected next, and what every event does to it. Plain data; time comes in with
 * the events. No take is ever removed: undoing one sets it aside.
 */
import type { TakeId } from '../piano/ids.ts';
import type { NoNoteReason, NoteReading } from '../piano/reading.ts';
import { type BookTake, itemStatuses, nextIndex } from './bookStates.ts';
import { isSameItem, type PlanItem } from './surveyPlan.ts';
import { walkDirection } from './walk.ts';

/** What `undo` puts back. */
export type UndoStep = {
  readonly kind: 'heard' | 'renamed' | 'set-aside' | 'skip' | 'move';
  readonly take: BookTake | null;
  readonly expectedIndex: number | null;
  readonly skippedIndexes: readonly number[];
};

export type SurveyBook = {
  readonly plan: readonly PlanItem[];
  /** In the order heard. */
  readonly takes: readonly BookTake[];
  /** Index into the plan; null when everything is kept or skipped. */
  readonly expectedIndex: number | null;
  /** What the player chose to leave out; a take of it brings it back. */
  readonly skippedIndexes: readonly number[];
  readonly isPaused: boolean;
  readonly wasPausedSinceLastTake: boolean;
  /** The last sound in which no note was found; null once a note was heard after it. */
  readonly lastNothing: { readonly reason: NoNoteReason; readonly atS: number } | null;
  /** The newest at the end. */
  readonly undoSteps: readonly UndoStep[];
};

export type BookEvent =
  | { readonly kind: 'heard'; readonly id: TakeId; readonly reading: NoteReading; readonly atS: number }
  | { readonly kind: 'nothing-heard'; readonly reason: NoNoteReason; readonly atS: number }
  /** That was another note or string: the take, measured again as that one. */
  | { readonly kind: 'renamed'; readonly takeId: TakeId; readonly reading: NoteReading }
  /** The player does not want this take. */
  | { readonly kind: 'set-aside'; readonly takeId: TakeId }
  /** One item back in the plan, whatever its state, to play it again. */
  | { readonly kind: 'back' }
  /** Leave the expected item out. */
  | { readonly kind: 'skip' }
  | { readonly kind: 'go-to'; readonly item: PlanItem }
  | { readonly kind: 'pause' }
  | { readonly kind: 'resume' }
  | { readonly kind: 'undo' };

/** @throws {RangeError} if the plan is empty */
export function openSurveyBook(plan: readonly PlanItem[]): SurveyBook {
  if (plan.length === 0) throw new RangeError('plan must name at least one string, got none');
  return {
    plan,
    takes: [],
    expectedIndex: 0,
    skippedIndexes: [],
    isPaused: false,
    wasPausedSinceLastTake: false,
    lastNothing: null,
    undoSteps: [],
  };
}

/** The book after the event. An event that does not apply (an unknown take, nothing to undo) leaves it as it is. */
export function nextSurveyBook(book: SurveyBook, event: BookEvent): SurveyBook {
  switch (event.kind) {
    case 'heard':
      return hear(book, event);
    case 'nothing-heard':
      return { ...book, lastNothing: { reason: event.reason, atS: event.atS } };
    case 'renamed':
      return changeTake(book, event, (take) => ({ ...take, reading: event.reading }));
    case 'set-aside':
      return changeTake(book, event, (take) => ({ ...take, isSetAside: true }));
    case 'back':
      return moveTo(book, (book.expectedIndex ?? book.plan.length) - 1);
    case 'go-to':
      return moveTo(book, indexOfItem(book, event.item));
    case 'skip':
      return skip(book);
    case 'pause':
      return { ...book, isPaused: true, wasPausedSinceLastTake: true };
    case 'resume':
      return { ...book, isPaused: false };
    case 'undo':
      return undo(book);
  }
}

function hear(book: SurveyBook, event: Extract<BookEvent, { kind: 'heard' }>): SurveyBook {
  const { id, reading, atS } = event;
  const last = book.takes.at(-1);
  const sinceLastS = last && !book.wasPausedSinceLastTake ? atS - last.heardAtS : null;
  const take = { id, reading, heardAtS: atS, sinceLastS, isSetAside: false };
  const heard: SurveyBook = {
    ...book,
    takes: [...book.takes, take],
    wasPausedSinceLastTake: book.isPaused,
    lastNothing: null,
    undoSteps: [...book.undoSteps, stepOf(book, 'heard', { ...take, isSetAside: true })],
  };
  return walkOn(heard, reading);
}

/** Expects what comes after this note; the same once more if it is still without a usable take. A note outside the plan moves nothing. */
function walkOn(book: SurveyBook, at: PlanItem): SurveyBook {
  const index = indexOfItem(book, at);
  if (index < 0) return book;
  const skippedIndexes = book.skippedIndexes.filter((skipped) => skipped !== index);
  const statuses = itemStatuses(book.plan, book.takes, skippedIndexes);
  const heardMidi = book.takes.filter((take) => !take.isSetAside).map((take) => take.reading.midi);
  const isDone = statuses[index]?.state === 'kept';
  const expectedIndex = isDone ? nextIndex(statuses, index, walkDirection(heardMidi) ?? 1) : index;
  return { ...book, skippedIndexes, expectedIndex };
}

function changeTake(
  book: SurveyBook,
  { kind, takeId }: Extract<BookEvent, { kind: 'renamed' | 'set-aside' }>,
  change: (take: BookTake) => BookTake,
): SurveyBook {
  const before = book.takes.find((take) => take.id === takeId);
  if (!before) return book;
  const after = change(before);
  const changed: SurveyBook = {
    ...book,
    takes: book.takes.map((take) => (take.id === takeId ? after : take)),
    undoSteps: [...book.undoSteps, stepOf(book, kind, before)],
  };
  return walkOn(changed, after.reading);
}

function moveTo(book: SurveyBook, index: number): SurveyBook {
  if (index < 0 || index >= book.plan.length) return book;
  const undoSteps = [...book.undoSteps, stepOf(book, 'move', null)];
  return { ...book, expectedIndex: index, undoSteps };
}

function skip(book: SurveyBook): SurveyBook {
  const { expectedIndex } = book;
  if (expectedIndex === null) return book;
  const skippedIndexes = [...new Set([...book.skippedIndexes, expectedIndex])];
  const statuses = itemStatuses(book.plan, book.takes, skippedIndexes);
  const heardMidi = book.takes.filter((take) => !take.isSetAside).map((take) => take.reading.midi);
  return {
    ...book,
    skippedIndexes,
    expectedIndex: nextIndex(statuses, expectedIndex, walkDirection(heardMidi) ?? 1),
    undoSteps: [...book.undoSteps, stepOf(book, 'skip', null)],
  };
}

function undo(book: SurveyBook): SurveyBook {
  const step = book.undoSteps.at(-1);
  if (!step) return book;
  return {
    ...book,
    takes: book.takes.map((take) => (take.id === step.take?.id ? step.take : take)),
    expectedIndex: step.expectedIndex,
    skippedIndexes: step.skippedIndexes,
    undoSteps: book.undoSteps.slice(0, -1),
  };
}

function stepOf(book: SurveyBook, kind: UndoStep['kind'], take: BookTake | null): UndoStep {
  return { kind, take, expectedIndex: book.expectedIndex, skippedIndexes: book.skippedIndexes };
}

function indexOfItem(book: SurveyBook, { midi, stringPosition }: PlanItem): number {
  return book.plan.findIndex((item) => isSameItem(item, { midi, stringPosition }));
}
