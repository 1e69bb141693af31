import { describe, expect, it } from 'vitest';
import { nextOfWalk, walkDirection } from '../../src/survey/walk.ts';

describe('nextOfWalk', () => {
  it.each([
    { heard: [60, 61, 62, 63], next: 64, why: 'up' },
    { heard: [63, 62, 61, 60], next: 59, why: 'down' },
    { heard: [60, 61, 63, 64], next: 65, why: 'a key left out' },
    { heard: [60, 61, 62, 62, 63, 63], next: 64, why: 'notes played twice' },
    { heard: [30, 60, 61, 62, 63], next: 64, why: 'only the last steps count' },
    { heard: [60, 61, 62], next: undefined, why: 'two steps are no walk yet' },
    { heard: [60, 61, 62, 65], next: undefined, why: 'a jump' },
    { heard: [60, 61, 60, 61, 60], next: undefined, why: 'to and fro' },
    { heard: [], next: undefined, why: 'nothing heard' },
  ])('gives $next after $heard: $why', ({ heard, next }) => {
    expect(nextOfWalk(heard)).toBe(next);
  });
});

it('walkDirection is 1 up and -1 down', () => {
  expect([walkDirection([1, 2, 3, 4]), walkDirection([9, 8, 6, 5])]).toEqual([1, -1]);
});
