import { expect, it } from 'vitest';
import { startHistory, stepBack, stepForward, withStep } from '../../../src/ui/sheet/editHistory.ts';

const three = withStep(withStep(startHistory('a'), 'b'), 'c');

it('goes back and forth over the steps', () => {
  const back = stepBack(three);
  expect(back.present).toBe('b');
  expect(stepBack(back).present).toBe('a');
  expect(stepForward(stepBack(back)).present).toBe('b');
  expect(stepForward(stepForward(stepBack(back))).present).toBe('c');
});

it('stays at either end', () => {
  expect(stepForward(three)).toBe(three);
  const first = stepBack(stepBack(three));
  expect(stepBack(first)).toBe(first);
});

it('forgets what was taken back once something else is done', () => {
  const other = withStep(stepBack(three), 'd');
  expect(stepForward(other).present).toBe('d');
  expect(stepBack(other).present).toBe('b');
});

it('takes no step where nothing changes', () => {
  expect(withStep(three, 'c')).toBe(three);
});
