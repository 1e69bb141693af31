/** The app in a fresh profile, watched for everything that a browser complains about. */
import type { BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';

export type WatchedPage = { readonly page: Page; readonly complaints: readonly string[] };

export async function openApp(context: BrowserContext): Promise<WatchedPage> {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => complaints.push(`${request.url()}: ${request.failure()?.errorText}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.url()}: ${response.status()}`);
  });
  await page.goto(inject('appUrl'));
  return { page, complaints };
}
