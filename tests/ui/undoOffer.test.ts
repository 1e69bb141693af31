import { afterEach, expect, it } from 'vitest';
import { currentUndoOffer, offerUndo, withdrawUndo } from '../../src/ui/undoOffer.ts';

const offer = (message: string) => ({ message, undo: () => undefined });

afterEach(() => offerUndo(null));

it('an offer that has become void is taken back', () => {
  offerUndo({ ...offer('The demonstration is gone.'), subject: 'demonstration' });
  withdrawUndo('demonstration');
  expect(currentUndoOffer()).toBeNull();
});

it('an offer of something else stays', () => {
  offerUndo(offer('A visit is gone.'));
  withdrawUndo('demonstration');
  expect(currentUndoOffer()?.message).toBe('A visit is gone.');
});
