/** What an automatic check finds wrong with the page for people who cannot see or point well; serious and critical faults only. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** One line per fault and place, in light and in dark; empty where there is none. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const light = await faultsIn(page, 'light');
  const dark = await faultsIn(page, 'dark');
  await page.emulateMedia({ colorScheme: null });
  return [...light, ...dark];
}

async function faultsIn(page: Page, colorScheme: 'light' | 'dark'): Promise<string[]> {
  await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${colorScheme}: ${id}: ${help}: ${target.join(' ')}`));
}
