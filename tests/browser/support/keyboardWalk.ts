/** Going through a page as somebody does who has no pointer. */
import type { Locator, Page } from 'playwright-core';

/** More stops than any screen has, apart from the note cells. */
const MOST_STOPS = 160;

/** Presses Tab until the focus stands on it. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor();
  for (let stop = 0; stop < MOST_STOPS; stop += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the focus never reaches ${String(target)}`);
}

export async function pressOn(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
}

export async function typeInto(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.type(text);
}
