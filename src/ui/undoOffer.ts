/**
 * The one offer to undo that stands open: whoever removes something offers to put it back, instead of asking first. A newer
 * offer replaces an older one; what is offered stays until it is used, replaced or put away.
 */
export type UndoOffer = { readonly message: string; readonly undo: () => Promise<void> | void };

let current: UndoOffer | null = null;
const listeners = new Set<() => void>();

export function offerUndo(offer: UndoOffer | null): void {
  current = offer;
  for (const listener of listeners) listener();
}

export function currentUndoOffer(): UndoOffer | null {
  return current;
}

export function onUndoOffer(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
