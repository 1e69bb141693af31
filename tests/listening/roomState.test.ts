import { expect, it } from 'vitest';
import { nextRoom, type RoomEvent, UNHEARD_ROOM } from '../../src/listening/roomState.ts';
import { roomSentence } from '../../src/screens/recording/roomWords.ts';

const level = (peakDbfs: number, isClipped = false): RoomEvent => ({ kind: 'level', level: { peakDbfs, isClipped } });
const quiet: RoomEvent = { kind: 'quiet', quiet: { noiseDbfs: -70, trebleNoiseDbfs: -80, hum: null } };
const after = (...events: RoomEvent[]) => [quiet, ...events].reduce(nextRoom, UNHEARD_ROOM);

it('takes no level for a blow before something was struck', () => {
  expect(after(level(-20), level(-60)).blow).toBeNull();
});

it('takes the beginning of the sound for no blow', () => {
  expect([level(-5), { kind: 'strike' } as const, level(-5), quiet].reduce(nextRoom, UNHEARD_ROOM).blow).toBeNull();
});

it('keeps the loudest peak of a blow, also where it was told just before the strike', () => {
  expect(after(level(-60), level(-12), { kind: 'strike' }, level(-15), level(-40)).blow?.peakDbfs).toBe(-12);
  expect(after(level(-60), { kind: 'strike' }, level(-9), level(-40)).blow?.peakDbfs).toBe(-9);
});

it('does not forget that a blow was clipped', () => {
  expect(after(level(-60), { kind: 'strike' }, level(0, true), { kind: 'strike' }, level(-9)).blow?.isClipped).toBe(
    true,
  );
});

it('has a sentence with its figures for every finding', () => {
  expect(roomSentence({ kind: 'hum', mainsHz: 50, strongestHz: 99.97, levelDbfs: -48.4 }).sentence).toMatch(
    /100 Hz \(−48 dB\)/,
  );
  expect(roomSentence({ kind: 'treble-may-drown', trebleNoiseDbfs: -58, fromMidi: 102 }).sentence).toMatch(/F♯7/);
  expect(roomSentence({ kind: 'quiet', noiseDbfs: -72.3 })).toEqual({ sentence: 'The room is quiet (−72 dB).' });
});
