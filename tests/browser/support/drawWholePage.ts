/** A page draws what comes near what is seen of it. Printing draws all of it, and so does a test that looks at all of it. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { texts } from '../../../src/ui/texts.ts';

/** @param drawing what stands in a chart's place before, in the page's language */
export async function drawWholePage(page: Page, drawing: string = texts.charts.drawing): Promise<void> {
  const leftUndrawn = async () => {
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    return page.getByText(drawing).count();
  };
  await expect.poll(leftUndrawn, { timeout: 30_000 }).toBe(0);
}
