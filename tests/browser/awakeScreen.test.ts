import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { openApp } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginSurvey } from './support/recordSurvey.ts';

declare global {
  /** Holds of the screen that were asked for and given back, in order. */
  var holds: string[];
}

const PLAYED = fileURLToPath(new URL('../../sample-audio/a4-one-string.wav', import.meta.url));
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser({ kind: 'file', path: PLAYED });
});
afterAll(() => browser.close());

async function listeningPage(prepare: () => void): Promise<Page> {
  const context = await browser.newContext();
  await context.addInitScript(prepare);
  const { page } = await openApp(context);
  await beginSurvey(page);
  return page;
}

/** A busy machine takes its time. */
const PATIENT = { timeout: 30_000 };

const button = (page: Page, name: string) => page.getByRole('button', { name });
const advice = (page: Page) => page.getByText(texts.recording.screenMayDarken);

describe('while a survey is recorded, the screen', () => {
  it('is held awake, let go in a pause, held again after it, and let go at the end', async () => {
    const page = await listeningPage(() => {
      globalThis.holds = [];
      const request = async () => {
        holds.push('held');
        const release = async () => void holds.push('let go');
        return Object.assign(new EventTarget(), { release });
      };
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    });
    const told = () => page.evaluate(() => holds);
    await expect.poll(told, PATIENT).toEqual(['held']);
    await button(page, texts.recording.buttons.pause).click();
    await expect.poll(told, PATIENT).toEqual(['held', 'let go']);
    await button(page, texts.recording.resume).click();
    await expect.poll(told, PATIENT).toEqual(['held', 'let go', 'held']);
    expect(await advice(page).count()).toBe(0);
    await button(page, texts.recording.buttons.finish).click();
    await expect.poll(told, PATIENT).toEqual(['held', 'let go', 'held', 'let go']);
  });

  it('may go dark where the browser cannot hold it: recording works, and one line says so', async () => {
    const page = await listeningPage(() => {
      Reflect.deleteProperty(Navigator.prototype, 'wakeLock');
    });
    await advice(page).waitFor();
    await page.getByRole('meter', { name: texts.recording.level.label }).waitFor({ state: 'attached' });
  });
});
