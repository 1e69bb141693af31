/** The page that has capture and workers without screens. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';
import type {} from '../harness/harness.ts';

export async function openHarness(browser: Browser, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await goToHarness(page);
  return page;
}

export async function goToHarness(page: Page, url: string = inject('harnessUrl')): Promise<void> {
  await page.goto(url);
  await page.waitForFunction(() => globalThis.harness !== undefined);
}
