/**
 * The one offer to undo that stands open: whoever removes something offers to put it back, instead of asking first. A newer
 * offer replaces an older one; what is offered stays until it is used, replaced or put away.
 */
export type UndoOffer = {
  readonly message: string;
  readonly undo: () => Promise<void> | void;
  /** What was removed, for whoever brings it back in another way and so makes the offer void. */
  readonly subject?: 'demonstration';
};

let current: UndoOffer | null = null;
const listeners = new Set<() => void>();

export function offerUndo(offer: UndoOffer | null): void {
  current = offer;
  for (const listener of listeners) listener();
}

/** Takes back an offer that has become void; one of another subject stays. */
export function withdrawUndo(subject: NonNullable<UndoOffer['subject']>): void {
  if (current?.subject === subject) offerUndo(null);
}

export function currentUndoOffer(): UndoOffer | null {
  return current;
}

export function onUndoOffer(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
