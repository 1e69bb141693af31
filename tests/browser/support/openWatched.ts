/** A new page at an address, watched for everything that a browser complains about. */
import type { BrowserContext, Page } from 'playwright-core';

type WatchedPage = { readonly page: Page; readonly complaints: readonly string[] };

export async function openWatched(context: BrowserContext, url: string): Promise<WatchedPage> {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('requestfailed', (request) => {
    const fault = request.failure()?.errorText;
    // Leaving a page while it loads its charts breaks the load off: that is no fault of the page.
    if (fault !== 'net::ERR_ABORTED') complaints.push(`${request.url()}: ${fault}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.url()}: ${response.status()}`);
  });
  await page.goto(url);
  return { page, complaints };
}
