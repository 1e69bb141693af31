import { expect, it } from 'vitest';
import { scheduleLabel } from '../../../src/screens/stringing/scheduleLabel.ts';

it.each([
  ['As it is', 'as it is', 'As it is (A4 = 440 Hz)'],
  ['Before the fire', 'as it is', 'Before the fire (as it is, A4 = 440 Hz)'],
  ['Plan 1', 'planned', 'Plan 1 (planned, A4 = 440 Hz)'],
] as const)('a schedule named “%s” that is %s reads: %s', (name, kind, text) => {
  expect(scheduleLabel({ name, kind, pitchStandardHz: 440 }).replaceAll('\u00a0', ' ')).toBe(text);
});
