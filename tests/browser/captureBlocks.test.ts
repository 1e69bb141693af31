import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BlockMessage, SoundBlock } from '../../src/piano/soundBlock.ts';
import { openBrowser } from './support/openBrowser.ts';
import { openHarness } from './support/openHarness.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  page = await openHarness(browser);
});
afterAll(() => browser.close());

type Rendered = { mismatchCount: number; lengths: number[]; isContiguous: boolean; endFrame: number };

/** Noise through the worklet, offline: what comes out of the port against what went in. */
function render(frameCount: number): Promise<Rendered> {
  return page.evaluate(async (frames) => {
    const context = new OfflineAudioContext(1, frames, 44100);
    await context.audioWorklet.addModule(harness.workletUrl);
    const node = new AudioWorkletNode(context, 'capture-blocks', { channelCount: 1, channelCountMode: 'explicit' });
    node.connect(context.destination);
    const buffer = context.createBuffer(1, frames, 44100);
    const sent = buffer.getChannelData(0).map(() => Math.random() - 0.5);
    buffer.copyToChannel(sent, 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(node);
    source.start();
    const { port1, port2 } = new MessageChannel();
    const blocks: SoundBlock[] = [];
    const flushed = () =>
      new Promise<void>((resolve) => {
        port2.onmessage = ({ data }: MessageEvent<BlockMessage>) => {
          if (data.kind === 'block') blocks.push(data);
          else resolve();
        };
        node.port.postMessage({ kind: 'flush' });
      });
    node.port.postMessage({ kind: 'connect', blocks: port1 }, [port1]);
    await flushed(); // the port has arrived before rendering begins
    await context.startRendering();
    await flushed();
    const heard = blocks.flatMap((block) => [...block.samples]);
    const ends = blocks.map((block) => block.firstFrame + block.samples.length);
    return {
      mismatchCount: sent.reduce((count, sample, i) => count + (heard[i] === sample ? 0 : 1), heard.length - frames),
      lengths: blocks.map((block) => block.samples.length),
      isContiguous: blocks.every((block, i) => block.firstFrame === (i === 0 ? 0 : ends[i - 1])),
      endFrame: ends.at(-1) ?? 0,
    };
  }, frameCount);
}

describe('captureBlocks in the audio thread', () => {
  it('hands over every sample as it is, in blocks that follow each other', async () => {
    const rendered = await render(2048 * 200);
    expect(rendered.mismatchCount).toBe(0);
    expect(rendered.isContiguous).toBe(true);
    expect(rendered.lengths).toEqual(Array.from({ length: 200 }, () => 2048));
  });

  it('loses nothing of a last block that is not full, once it is flushed', async () => {
    const frames = 2048 * 20 + 5 * 128;
    const rendered = await render(frames);
    expect(rendered.mismatchCount).toBe(0);
    expect(rendered.lengths.at(-1)).toBe(5 * 128);
    expect(rendered.endFrame).toBe(frames);
  });
});
