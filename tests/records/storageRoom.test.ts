import { expect, it } from 'vitest';
import { storageRoom } from '../../src/records/storageRoom.ts';

const free = (freeBytes: number) => ({ usedBytes: 1e9, quotaBytes: 1e9 + freeBytes, isPersistent: null });

it.each([
  [1e9, 'enough'],
  [300e6, 'little'],
  [64e6, 'figures-only'],
  [-1, 'figures-only'],
] as const)('with %i bytes free there is %s', (freeBytes, room) => {
  expect(storageRoom(free(freeBytes))).toBe(room);
});

it('takes a browser that does not say for one with enough', () => {
  expect(storageRoom({ usedBytes: null, quotaBytes: null, isPersistent: null })).toBe('enough');
  expect(storageRoom({ usedBytes: 5, quotaBytes: null, isPersistent: null })).toBe('enough');
});
