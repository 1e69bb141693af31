import { expect, it } from 'vitest';
import type { NoteReading, TakeOutcome } from '../../src/piano/reading.ts';
import { createWalk } from '../../src/workers/walk.ts';

const heard = (midi: number, isUsable = true): TakeOutcome => ({
  found: true,
  reading: { midi, quality: { snrDb: 40, isClipped: false, isUsable, faults: [] } } as unknown as NoteReading,
});
const struck = (settingsNumber: number, expectedMidi?: number) => ({
  settings: { pitchStandardHz: 440, stringPosition: 0 as const, ...(expectedMidi !== undefined && { expectedMidi }) },
  settingsNumber,
});

it('goes up one note after each good take', () => {
  const walk = createWalk();
  expect(walk.expectedMidi(struck(0, 21))).toBe(21);
  walk.hear(struck(0, 21), heard(21));
  expect(walk.expectedMidi(struck(0, 21))).toBe(22);
});

it('goes on from the note that was played, not from the one that was expected', () => {
  const walk = createWalk();
  walk.expectedMidi(struck(0, 21));
  walk.hear(struck(0, 21), heard(40));
  expect(walk.expectedMidi(struck(0, 21))).toBe(41);
});

it('stays where it is after a take that is no good, and after none', () => {
  const walk = createWalk();
  walk.expectedMidi(struck(0, 30));
  walk.hear(struck(0, 30), heard(30, false));
  walk.hear(struck(0, 30), { found: false, reason: 'knock', detail: '' });
  expect(walk.expectedMidi(struck(0, 30))).toBe(30);
});

it('starts anew where the page says so, even with the same words', () => {
  const walk = createWalk();
  walk.expectedMidi(struck(0, 30));
  walk.hear(struck(0, 30), heard(30));
  expect(walk.expectedMidi(struck(1, 30))).toBe(30);
});

it('expects nothing where nothing is walked', () => {
  const walk = createWalk();
  walk.expectedMidi(struck(0));
  walk.hear(struck(0), heard(30));
  expect(walk.expectedMidi(struck(0))).toBeUndefined();
});
