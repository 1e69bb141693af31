/** Starts the Chromium that globalSetup found, with the microphone that a test needs. */
import type { Browser } from 'playwright-core';
import { inject } from 'vitest';
import { launchChromium } from './launchChromium.ts';

export type Microphone = Parameters<typeof launchChromium>[1];

export function openBrowser(microphone: Microphone, flags: readonly string[] = []): Promise<Browser> {
  return launchChromium(inject('chromiumPath'), microphone, flags);
}
