/** The app in a fresh profile, watched for everything that a browser complains about. */
import type { BrowserContext } from 'playwright-core';
import { inject } from 'vitest';
import { openWatched } from './openWatched.ts';

export type WatchedPage = Awaited<ReturnType<typeof openWatched>>;

export function openApp(context: BrowserContext): Promise<WatchedPage> {
  return openWatched(context, inject('appUrl'));
}
