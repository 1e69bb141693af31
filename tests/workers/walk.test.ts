import { expect, it } from 'vitest';
import type { NoteReading, TakeOutcome } from '../../src/piano/reading.ts';
import { createWalk, type Walk } from '../../src/workers/walk.ts';

const heard = (midi: number, isUsable = true): TakeOutcome => ({
  found: true,
  reading: { midi, quality: { snrDb: 40, isClipped: false, isUsable, faults: [] } } as unknown as NoteReading,
});
const struck = (settingsNumber: number, expectedMidi?: number) => ({
  settings: { pitchStandardHz: 440, stringPosition: 0 as const, ...(expectedMidi !== undefined && { expectedMidi }) },
  settingsNumber,
});
const play = (walk: Walk, notes: readonly number[]) => {
  for (const midi of notes) walk.hear(heard(midi));
};

it('expects nothing before a walk is established, and then its next note', () => {
  const walk = createWalk();
  expect(walk.expectedMidi(struck(0))).toBeUndefined();
  play(walk, [40, 41, 42, 43]);
  expect(walk.expectedMidi(struck(0))).toBe(44);
});

it('expects the note that the page named until a good take was heard', () => {
  const walk = createWalk();
  play(walk, [40, 41, 42, 43]);
  expect(walk.expectedMidi(struck(1, 60))).toBe(60);
  walk.hear(heard(60, false));
  walk.hear({ found: false, reason: 'knock', detail: '' });
  expect(walk.expectedMidi(struck(1, 60))).toBe(60);
  walk.hear(heard(60));
  expect(walk.expectedMidi(struck(1, 60))).toBeUndefined();
  play(walk, [61, 62, 63]);
  expect(walk.expectedMidi(struck(1, 60))).toBe(64);
});

it('takes up a note that is named again, even with the same words', () => {
  const walk = createWalk();
  walk.expectedMidi(struck(0, 30));
  walk.hear(heard(30));
  expect(walk.expectedMidi(struck(0, 30))).toBeUndefined();
  expect(walk.expectedMidi(struck(1, 30))).toBe(30);
});
