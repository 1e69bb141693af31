import { describe, expect, it } from 'vitest';
import { createSoundEventQueue, type SoundEvent } from '../../src/survey/soundEvents.ts';

const strike = (index: number): SoundEvent => ({ kind: 'strike', index, evidenceDb: 50 });
const frame = (endIndex: number): SoundEvent => ({
  kind: 'frame',
  endIndex,
  meanSquare: 0,
  tones: { levelsDbfs: new Float32Array(), floorDbfs: new Float32Array() },
});
const placeOf = (event: SoundEvent) => (event.kind === 'strike' ? `strike ${event.index}` : `frame ${event.endIndex}`);

describe('createSoundEventQueue', () => {
  it('hands on in order of time what came in any order, each event once', () => {
    const queue = createSoundEventQueue(10);
    for (const event of [frame(100), frame(200), strike(150), frame(300), strike(20)]) queue.add(event);
    expect(queue.takeUpTo(199).map(placeOf)).toEqual(['strike 20', 'frame 100', 'strike 150']);
    expect(queue.takeUpTo(199)).toEqual([]);
    expect(queue.takeUpTo(1000).map(placeOf)).toEqual(['frame 200', 'frame 300']);
  });

  it('hands on a strike and what was before it, and keeps what is after it', () => {
    const queue = createSoundEventQueue(10);
    for (const event of [frame(100), strike(150), frame(200), frame(300), strike(350)]) queue.add(event);
    expect(queue.takeUpToStrike(149)).toEqual([]);
    expect(queue.takeUpToStrike(320).map(placeOf)).toEqual(['frame 100', 'strike 150']);
    expect(queue.takeUpToStrike(320)).toEqual([]);
    expect(queue.takeUpTo(320).map(placeOf)).toEqual(['frame 200', 'frame 300']);
  });

  it('hands on the first of two strikes that are one', () => {
    const queue = createSoundEventQueue(10);
    for (const index of [105, 100, 111]) queue.add(strike(index));
    expect(queue.takeUpTo(100).map(placeOf)).toEqual(['strike 100']);
    expect(queue.takeUpTo(200).map(placeOf)).toEqual(['strike 111']);
  });

  it('knows a strike nearby before and after it was handed on', () => {
    const queue = createSoundEventQueue(10);
    queue.add(strike(100));
    expect([queue.hasStrikeNear(92), queue.hasStrikeNear(120)]).toEqual([true, false]);
    queue.takeUpTo(100);
    expect([queue.hasStrikeNear(108), queue.hasStrikeNear(120)]).toEqual([true, false]);
  });
});
