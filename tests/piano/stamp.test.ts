import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compareStamps, editedStamp, joinedStamp } from '../../src/piano/stamp.ts';

const stamp = fc.dictionary(fc.constantFrom('one', 'two', 'three'), fc.integer({ min: 0, max: 3 }));

it('calls a stamp newer after an edit, and older the other way round', () => {
  fc.assert(
    fc.property(stamp, (before) => {
      const after = editedStamp(before, 'two');
      expect(compareStamps(after, before)).toBe('newer');
      expect(compareStamps(before, after)).toBe('older');
    }),
  );
});

it('calls edits on two devices apart', () => {
  fc.assert(
    fc.property(stamp, (before) => {
      expect(compareStamps(editedStamp(before, 'one'), editedStamp(before, 'two'))).toBe('apart');
    }),
  );
});

it('joins two stamps into the smallest that is older than neither', () => {
  fc.assert(
    fc.property(stamp, stamp, (one, other) => {
      const joined = joinedStamp(one, other);
      expect(joinedStamp(other, one)).toEqual(joined);
      for (const part of [one, other]) expect(['same', 'newer']).toContain(compareStamps(joined, part));
      for (const [device, count] of Object.entries(joined))
        expect(count).toBe(Math.max(one[device] ?? 0, other[device] ?? 0));
    }),
  );
});

it('takes a device that never edited and one with no edits for the same', () => {
  expect(compareStamps({ one: 0 }, {})).toBe('same');
  expect(compareStamps(undefined, {})).toBe('same');
});
