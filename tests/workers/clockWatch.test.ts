import { describe, expect, it } from 'vitest';
import { clockDrift, createClockWatch } from '../../src/workers/clockWatch.ts';
import type { ClockMessage } from '../../src/workers/listeningMessages.ts';
import { seededRandom } from '../support/seededRandom.ts';

const STATED_RATE_HZ = 44100;
const BLOCK = 2048;

/** Blocks of a device whose clock is off, each told late by 1 ms or more and sometimes by very much more. */
function pointsOf(driftPpm: number, minutes: number, seed: number): ClockMessage[] {
  const random = seededRandom(seed);
  const watch = createClockWatch(STATED_RATE_HZ);
  const trueRateHz = STATED_RATE_HZ * (1 + driftPpm * 1e-6);
  const blockCount = Math.floor((minutes * 60 * STATED_RATE_HZ) / BLOCK);
  return Array.from({ length: blockCount }, (_, block) => {
    const frames = (block + 1) * BLOCK;
    const lateMs = 1 + 8 * random.uniform() + (random.uniform() < 0.02 ? 200 : 0);
    const point = watch.push(frames, 5000 + (1000 * frames) / trueRateHz + lateMs);
    return point === undefined ? [] : [{ kind: 'clock' as const, ...point, runNumber: 0 }];
  }).flat();
}

describe('clockDrift', () => {
  it.each([
    [0, 1],
    [80, 2],
    [-35, 3],
  ])('finds a drift of %i ppm in five minutes, within three of its own uncertainties', (driftPpm, seed) => {
    const drift = clockDrift(pointsOf(driftPpm, 5, seed), STATED_RATE_HZ);
    if (!drift.known) throw new Error('five minutes are enough');
    expect(Math.abs(drift.driftPpm - driftPpm)).toBeLessThan(3 * drift.driftStandardUncertaintyPpm);
    expect(drift.driftStandardUncertaintyPpm).toBeLessThan(3); // 3 ppm are 0.005 cents
  });

  it('says that a few seconds are not enough', () => {
    expect(clockDrift(pointsOf(80, 0.3, 1), STATED_RATE_HZ)).toEqual({ known: false, reason: 'not-enough-evidence' });
  });

  it('does not compare across an interruption', () => {
    const before = pointsOf(80, 5, 4);
    const after = pointsOf(80, 1, 5).map((point) => ({
      ...point,
      runNumber: 1,
      systemTimeMs: point.systemTimeMs + 9e5,
    }));
    expect(clockDrift([...before, ...after], STATED_RATE_HZ)).toEqual(clockDrift(before, STATED_RATE_HZ));
  });
});
