import { expect, it } from 'vitest';
import { createFrameCount } from '../../src/workers/frameCount.ts';

const block = (firstFrame: number, length = 2048) => ({
  kind: 'block' as const,
  firstFrame,
  samples: new Float32Array(length),
});

it('finds nothing missing between blocks that follow each other, wherever the count began', () => {
  const frames = createFrameCount();
  expect([block(12_800), block(14_848, 128), block(14_976)].map(frames.missingBefore)).toEqual([0, 0, 0]);
});

it('tells how many frames are missing', () => {
  const frames = createFrameCount();
  frames.missingBefore(block(0));
  expect(frames.missingBefore(block(2048 + 441))).toBe(441);
});

it('tells that a count went backwards', () => {
  const frames = createFrameCount();
  frames.missingBefore(block(50_000));
  expect(frames.missingBefore(block(0))).toBeNull();
});

it('does not mind a gap that was meant', () => {
  const frames = createFrameCount();
  frames.missingBefore(block(0));
  frames.forget();
  expect(frames.missingBefore(block(90_000))).toBe(0);
});
