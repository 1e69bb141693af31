/** A page draws what comes near what is seen of it. Printing draws all of it, and so does a test that looks at all of it. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { texts } from '../../../src/ui/texts.ts';

export async function drawWholePage(page: Page): Promise<void> {
  const leftUndrawn = async () => {
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    return page.getByText(texts.charts.drawing).count();
  };
  await expect.poll(leftUndrawn, { timeout: 30_000 }).toBe(0);
}
