/** The audio thread's part: copies the mono input into blocks and posts them to the port that it was handed. Nothing else. */
import type { BlockMessage, BlockRequest } from '../src/piano/soundBlock.ts';

/** 46 ms at 44.1 kHz: few enough messages to cost nothing, short enough for a level display. */
const BLOCK_SAMPLES = 2048;

class CaptureBlocks extends AudioWorkletProcessor {
  private blocks: MessagePort | undefined;
  private collecting = new Float32Array(BLOCK_SAMPLES);
  private collectedCount = 0;
  private firstFrame = 0;

  constructor() {
    super();
    this.port.onmessage = (event: MessageEvent<BlockRequest<MessagePort>>) => {
      const request = event.data;
      if (request.kind === 'connect') this.blocks = request.blocks;
      else this.flush();
    };
  }

  process(inputs: Float32Array[][]): boolean {
    const input = inputs[0]?.[0];
    if (this.blocks === undefined || input === undefined) return true; // no input shows as a gap in the frame count
    if (currentFrame !== this.firstFrame + this.collectedCount) this.startBlock();
    for (let taken = 0; taken < input.length; ) {
      const count = Math.min(input.length - taken, BLOCK_SAMPLES - this.collectedCount);
      this.collecting.set(input.subarray(taken, taken + count), this.collectedCount);
      this.collectedCount += count;
      taken += count;
      if (this.collectedCount === BLOCK_SAMPLES) this.postCollected();
    }
    return true;
  }

  private startBlock(): void {
    this.postCollected();
    this.firstFrame = currentFrame;
  }

  private flush(): void {
    this.postCollected();
    this.blocks?.postMessage({ kind: 'flushed' } satisfies BlockMessage);
  }

  private postCollected(): void {
    if (this.collectedCount === 0) return;
    const samples =
      this.collectedCount === BLOCK_SAMPLES ? this.collecting : this.collecting.slice(0, this.collectedCount);
    const message: BlockMessage = { kind: 'block', firstFrame: this.firstFrame, samples };
    this.blocks?.postMessage(message, [samples.buffer]);
    this.firstFrame += this.collectedCount;
    this.collecting = new Float32Array(BLOCK_SAMPLES);
    this.collectedCount = 0;
  }
}

registerProcessor('capture-blocks', CaptureBlocks);
