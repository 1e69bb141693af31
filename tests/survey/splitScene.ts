/** Runs the splitter over a scene and compares what it cut with what was played. */
import { createTakeSplitter, type Segment } from '../../src/survey/takeSplitter.ts';
import type { Scene } from './scene.ts';

export type SplitCount = {
  readonly playedCount: number;
  /** Strikes that have a take within 50 ms. */
  readonly foundCount: number;
  /** Takes that no strike began. */
  readonly inventedCount: number;
  /** Found minus true, of each strike found. */
  readonly onsetErrorsMs: readonly number[];
};

export function splitAll(samples: Float32Array, sampleRateHz: number, blockLength = samples.length): Segment[] {
  const splitter = createTakeSplitter(sampleRateHz);
  const segments: Segment[] = [];
  for (let start = 0; start < samples.length; start += blockLength)
    segments.push(...splitter.push(samples.subarray(start, start + blockLength)));
  return [...segments, ...splitter.finish()];
}

export const strikeOf = (segment: Segment) => segment.startSample + segment.onsetIndex;

export function countStrikes({ notes, sampleRateHz }: Scene, segments: readonly Segment[]): SplitCount {
  const strikes = segments.map(strikeOf);
  const errorsMs = notes.flatMap(({ onsetIndex }) => {
    const near = strikes.filter((strike) => Math.abs(strike - onsetIndex) < 0.05 * sampleRateHz);
    return near.length === 0 ? [] : [(1000 * (near[0]! - onsetIndex)) / sampleRateHz];
  });
  return {
    playedCount: notes.length,
    foundCount: errorsMs.length,
    inventedCount: strikes.length - errorsMs.length,
    onsetErrorsMs: errorsMs,
  };
}
