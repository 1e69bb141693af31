/** A page draws what comes near what is seen of it. Printing draws all of it, and so does a test that looks at all of it. */
import type { Page } from 'playwright-core';
import { texts } from '../../../src/ui/texts.ts';

const LONGEST_MS = 30_000;
const AGAIN_AFTER_MS = 100;

/** @param drawing what stands in a chart's place before, in the page's language */
export async function drawWholePage(page: Page, drawing: string = texts.charts.drawing): Promise<void> {
  for (let waitedMs = 0; ; waitedMs += AGAIN_AFTER_MS) {
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    const undrawnCount = await page.getByText(drawing).count();
    if (undrawnCount === 0) return;
    if (waitedMs > LONGEST_MS) throw new Error(`${undrawnCount} charts are still to be drawn after ${LONGEST_MS} ms`);
    await page.waitForTimeout(AGAIN_AFTER_MS);
  }
}
