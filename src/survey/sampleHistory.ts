/** The last stretch of a stream, addressed by each sample's index in the whole stream. */

export type SampleHistory = {
  /** How many samples have come in so far. */
  readonly endIndex: number;
  append(block: Float32Array): void;
  /**
   * The samples from `startIndex` up to, not including, `endIndex`; zeros before the stream's first sample. A view where it can
   * be: good until the next append.
   */
  view(startIndex: number, endIndex: number): Float32Array;
};

/**
 * Memory: an eighth more than `capacity` samples, whatever the length of the stream.
 * @throws {RangeError} from `view`, if a sample is asked for that is no longer held or has not come yet
 */
export function createSampleHistory(capacity: number): SampleHistory {
  const slack = Math.ceil(capacity / 8);
  const held = new Float32Array(capacity + slack);
  let heldCount = 0;
  let endIndex = 0;
  const makeRoom = (count: number) => {
    if (heldCount + count <= held.length) return;
    const kept = Math.min(heldCount, capacity);
    held.copyWithin(0, heldCount - kept, heldCount);
    heldCount = kept;
  };
  return {
    get endIndex() {
      return endIndex;
    },
    append(block) {
      for (let start = 0; start < block.length; start += slack) {
        const piece = block.subarray(start, start + slack);
        makeRoom(piece.length);
        held.set(piece, heldCount);
        heldCount += piece.length;
        endIndex += piece.length;
      }
    },
    view(from, to) {
      const firstHeld = endIndex - heldCount;
      if (from >= firstHeld && to <= endIndex) return held.subarray(from - firstHeld, to - firstHeld);
      if (to > endIndex || (from < firstHeld && firstHeld > 0))
        throw new RangeError(`samples ${from} to ${to} were asked for, ${firstHeld} to ${endIndex} are held`);
      const out = new Float32Array(Math.max(0, to - from));
      const start = Math.max(from, firstHeld);
      if (to > start) out.set(held.subarray(start - firstHeld, to - firstHeld), start - from);
      return out;
    },
  };
}
