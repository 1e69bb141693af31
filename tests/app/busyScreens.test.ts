import { expect, it } from 'vitest';
import { underWayOn } from '../../src/app/busyScreens.ts';

it.each([
  ['workshop', 'nothing'],
  ['records', 'archive'],
  ['recording', 'entry'],
  ['new-visit', 'entry'],
] as const)('on the screen “%s” what is under way is: %s', (screen, underWay) => {
  expect(underWayOn(screen)).toBe(underWay);
});
