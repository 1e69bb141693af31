/** Follows the audio clock's count from block to block. */
import type { SoundBlock } from '../piano/soundBlock.ts';

export type FrameCount = {
  /** How many frames are missing before this block: 0 where it follows the last one, null where they go backwards. */
  readonly missingBefore: (block: SoundBlock) => number | null;
  /** What comes next need not follow. */
  readonly forget: () => void;
};

export function createFrameCount(): FrameCount {
  let nextFrame: number | undefined;
  return {
    missingBefore: (block) => {
      const missing = block.firstFrame - (nextFrame ?? block.firstFrame);
      nextFrame = block.firstFrame + block.samples.length;
      return missing >= 0 ? missing : null;
    },
    forget: () => {
      nextFrame = undefined;
    },
  };
}
