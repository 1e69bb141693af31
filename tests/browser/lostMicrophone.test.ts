import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { openBrowser } from './support/openBrowser.ts';
import { openHarness } from './support/openHarness.ts';

const folder = mkdtempSync(join(tmpdir(), 'microphone-'));
const file = join(folder, 'tone.wav');
let browser: Browser;
let page: Page;

declare global {
  /** What the page under test opened, for the tests to take away from it. */
  var opened: { contexts: AudioContext[]; tracks: MediaStreamTrack[] };
}

beforeAll(async () => {
  const tone = Float32Array.from({ length: 441 * 100 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / 44100));
  writeFileSync(file, writeWave(tone, 44100, 'float'));
  browser = await openBrowser({ kind: 'file', path: file });
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

beforeEach(async () => {
  page = await openHarness(browser);
  await page.evaluate(() => {
    globalThis.opened = { contexts: [], tracks: [] };
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (constraints) => {
      const stream = await ask(constraints);
      opened.tracks.push(...stream.getTracks());
      return stream;
    };
    const Context = AudioContext;
    globalThis.AudioContext = class extends Context {
      constructor(options?: AudioContextOptions) {
        super(options);
        opened.contexts.push(this);
      }
    };
  });
  await page.evaluate(() =>
    harness.listenAndNote({ pitchStandardHz: 440, stringPosition: 0 }).then(({ listening }) => listening.started),
  );
  await levelsAbove(-20, 3);
});
afterEach(() => page.context().close());

/** Waits until the page was told so many more levels above (or below, if negative count) a limit. */
async function levelsAbove(limitDbfs: number, count: number): Promise<void> {
  const isTold = async () => page.evaluate(() => session.told.reports.length);
  const from = await isTold();
  await page.waitForFunction(
    ([start, limit, wanted]) => {
      const levels = session.told.reports.slice(start).filter((report) => report.kind === 'level');
      return levels.filter((level) => level.peakDbfs > limit).length >= wanted;
    },
    [from, limitDbfs, count] as const,
  );
}

/** Waits until nothing was told about levels for half a second, where five are usual. */
async function levelsStop(): Promise<void> {
  await page.waitForFunction(async () => {
    const count = () => session.told.reports.filter((report) => report.kind === 'level').length;
    const before = count();
    await new Promise((resolve) => setTimeout(resolve, 500));
    return count() === before;
  });
}

const losses = () => page.evaluate(() => session.losses);
const holeCauses = () =>
  page.evaluate(() => session.told.reports.filter((report) => report.kind === 'hole').map((hole) => hole.cause));

describe('a microphone that is lost while it listens', () => {
  it('tells that the system took the sound away, goes on when asked, and marks the hole', async () => {
    await page.evaluate(() => opened.contexts[0]?.suspend());
    await page.waitForFunction(() => session.losses.length === 1);
    const isRunning = await page.evaluate(() => session.listening.started && session.listening.resume());
    expect(isRunning).toBe(true);
    await levelsAbove(-20, 3);
    expect(await losses()).toEqual(['audio-interrupted', 'restored']);
    expect(await holeCauses()).toContain('interrupted');
  });

  it('tells once that the microphone has ended', async () => {
    await page.evaluate(() => {
      const track = opened.tracks[0];
      track?.stop();
      track?.dispatchEvent(new Event('ended'));
      track?.dispatchEvent(new Event('mute'));
    });
    expect(await losses()).toEqual(['microphone-ended']);
  });

  it('tells that it is muted and that it is back', async () => {
    await page.evaluate(() => {
      opened.tracks[0]?.dispatchEvent(new Event('mute'));
      opened.tracks[0]?.dispatchEvent(new Event('unmute'));
    });
    await levelsAbove(-20, 1);
    expect(await losses()).toEqual(['microphone-muted', 'restored']);
    expect(await holeCauses()).toContain('interrupted');
  });

  it('tells that its device was unplugged, and not when another one was', async () => {
    await page.evaluate(() => navigator.mediaDevices.dispatchEvent(new Event('devicechange')));
    await levelsAbove(-20, 1);
    expect(await losses()).toEqual([]);
    await page.evaluate(() => {
      navigator.mediaDevices.enumerateDevices = async () => [];
      navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    });
    await page.waitForFunction(() => session.losses.length > 0);
    expect(await losses()).toEqual(['device-gone']);
  });
});

describe('a pause', () => {
  it('hears nothing until it ends, and is no hole', async () => {
    await page.evaluate(() => session.listening.started && session.listening.pause());
    await levelsStop();
    const holesBefore = await holeCauses();
    await page.evaluate(() => session.listening.started && session.listening.resume());
    await levelsAbove(-20, 3);
    expect((await holeCauses()).slice(holesBefore.length)).not.toContain('frames-missing');
    expect(await losses()).toEqual([]);
  });
});

describe('stopping', () => {
  it('releases the microphone and tells no loss', async () => {
    await page.evaluate(() => (session.listening.started ? session.listening.stop() : undefined));
    const states = await page.evaluate(() => [opened.tracks[0]?.readyState, opened.contexts[0]?.state]);
    expect(states).toEqual(['ended', 'closed']);
    expect(await losses()).toEqual([]);
    expect(await page.evaluate(() => session.told.failures)).toEqual([]);
  });
});
