import { describe, expect, it } from 'vitest';
import { createEarlyMoments } from '../../src/workers/earlyMoments.ts';

const RATE = 1000;
const BLOCK = 50;

/** Hears one take block by block, as long as it sounds; gives what was asked for, as samples after its strike. */
function tonesAsked(struckAt: number, confirmedAt: number, endedAt: number, suspected: readonly number[]): number[] {
  const moments = createEarlyMoments(RATE);
  const tones: number[] = [];
  for (let heard = BLOCK; heard <= endedAt; heard += BLOCK) {
    for (const at of suspected) if (at <= heard && at > heard - BLOCK) moments.suspectStrike(at);
    if (heard < confirmedAt) continue;
    const end = moments.endToMeasure(struckAt, heard);
    if (end !== null) tones.push(end - struckAt);
  }
  return tones;
}

describe('a take in progress', () => {
  it('is measured once when enough of it is there', () => {
    expect(tonesAsked(2000, 2500, 12_000, [2010])).toEqual([800]);
  });

  it('is measured as soon as its strike is confirmed, where that is later', () => {
    expect(tonesAsked(2000, 3300, 6000, [2010])).toEqual([1300]);
  });

  it('is measured again up to where a next strike is noticed, and not into the next note', () => {
    expect(tonesAsked(2000, 2500, 5000, [2010, 4420])).toEqual([800, 2390]);
  });

  it('is measured where a next strike is noticed before that', () => {
    expect(tonesAsked(2000, 2500, 3200, [2010, 2800])).toEqual([770]);
  });

  it('is measured at once where both came before it was confirmed', () => {
    expect(tonesAsked(2000, 2500, 2900, [2010, 2450])).toEqual([420]);
  });

  it('is not measured again for a little more of it', () => {
    expect(tonesAsked(2000, 2500, 3500, [2010, 3000])).toEqual([800]);
  });

  it('is not measured while next to nothing of it is there', () => {
    expect(tonesAsked(2000, 2500, 2900, [2010, 2280])).toEqual([]);
  });

  it('is measured on where a knock was taken for a strike', () => {
    const tones = tonesAsked(2000, 2500, 6000, [2010, 2600]);
    expect(tones).toHaveLength(2);
    expect(tones[0]).toBe(570);
    expect(tones[1]).toBeGreaterThanOrEqual(800);
  });

  it('does not stand in the way of the next one', () => {
    const moments = createEarlyMoments(RATE);
    expect(moments.endToMeasure(2000, 3000)).toBe(3000);
    expect(moments.endToMeasure(2000, 3050)).toBeNull();
    expect(moments.endToMeasure(4000, 5000)).toBe(5000);
  });
});
