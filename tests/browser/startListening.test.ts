import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { type Microphone, openBrowser } from './support/openBrowser.ts';
import { goToHarness, openHarness } from './support/openHarness.ts';

const folder = mkdtempSync(join(tmpdir(), 'microphone-'));
const file = join(folder, 'tone.wav');
const SETTINGS = { pitchStandardHz: 440, stringPosition: 0 } as const;
let browser: Browser;

beforeAll(async () => {
  const tone = Float32Array.from({ length: 44100 * 2 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / 44100));
  writeFileSync(file, writeWave(tone, 44100, 'float'));
  browser = await openBrowser({ kind: 'file', path: file });
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

describe('startListening without a microphone to listen to', () => {
  async function faultWith(microphone: Microphone, url?: string, flags: string[] = []): Promise<unknown> {
    const own = await openBrowser(microphone, flags);
    try {
      const page = await own.newPage();
      await goToHarness(page, url);
      return await page.evaluate(async (settings) => (await harness.listenAndNote(settings)).listening, SETTINGS);
    } finally {
      await own.close();
    }
  }

  it('says that there is none', async () => {
    expect(await faultWith({ kind: 'none' })).toMatchObject({ started: false, reason: 'no-microphone' });
  });

  it('says that it was refused', async () => {
    expect(await faultWith({ kind: 'refused' })).toMatchObject({ started: false, reason: 'microphone-refused' });
  });

  it('says that an insecure page has no access', async () => {
    const insecure = inject('harnessUrl').replace('localhost', 'workshop.example');
    const flags = ['--host-resolver-rules=MAP workshop.example 127.0.0.1'];
    const fault = await faultWith({ kind: 'file', path: file }, insecure, flags);
    expect(fault).toMatchObject({ started: false, reason: 'not-supported' });
  });
});

describe('startListening with a microphone', () => {
  it('says that the browser waits for a touch, and starts after it', async () => {
    const own = await openBrowser({ kind: 'none' }, ['--autoplay-policy=document-user-activation-required']);
    try {
      const context = await own.newContext();
      await hookMicrophone(context, readFileSync(file));
      const page = await context.newPage();
      // The page listens by itself: whatever a test calls in the page counts as a touch.
      await page.addInitScript(async (settings) => {
        while (globalThis.harness === undefined) await new Promise((resolve) => setTimeout(resolve, 20));
        await harness.listenAndNote(settings);
        console.log('answered');
      }, SETTINGS);
      const answered = page.waitForEvent('console', (message) => message.text() === 'answered');
      await page.goto(inject('harnessUrl'));
      await answered;
      expect(await page.evaluate(() => session.listening)).toMatchObject({ started: false, reason: 'audio-blocked' });
      await page.mouse.click(10, 10);
      await page.evaluate((settings) => harness.listenAndNote(settings).then(() => undefined), SETTINGS);
      expect(await page.evaluate(() => session.listening.started)).toBe(true);
      await page.waitForFunction(() => session.told.reports.some((report) => report.kind === 'level'));
    } finally {
      await own.close();
    }
  });

  it('gets unprocessed sound at the device’s rate and level, and tells the device', async () => {
    const page = await openHarness(browser);
    await page.evaluate((settings) => harness.listenAndNote(settings).then(() => undefined), SETTINGS);
    await page.waitForFunction(() => session.told.reports.filter((report) => report.kind === 'level').length >= 10);
    const facts = await page.evaluate(async () => {
      const { listening, told } = session;
      if (!listening.started) throw new Error(listening.detail);
      await listening.stop();
      const peaksDbfs = told.reports.filter((report) => report.kind === 'level').map((level) => level.peakDbfs);
      const { deviceLabel, sampleRateHz, notHonoured, notReported } = listening;
      return { deviceLabel, sampleRateHz, notHonoured, notReported, peaksDbfs, failures: told.failures };
    });
    expect(facts.failures).toEqual([]);
    expect(facts.sampleRateHz).toBe(44100);
    expect(facts.deviceLabel).toMatch(/\w/);
    expect(facts.notHonoured).not.toContain('autoGainControl');
    expect(facts.notHonoured).not.toContain('noiseSuppression');
    expect(facts.notHonoured).not.toContain('echoCancellation');
    // With speech processing on, the same tone comes out some 19 dB lower.
    expect(Math.max(...facts.peaksDbfs)).toBeCloseTo(20 * Math.log10(0.5), 1);
  });
});
