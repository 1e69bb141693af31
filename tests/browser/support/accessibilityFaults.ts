/** What an automatic check finds wrong with the page for people who cannot see or point well; serious and critical faults only. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** One line per fault and place, in light and in dark; empty where there is none. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const light = await faultsIn(page, 'light');
  const dark = await faultsIn(page, 'dark', RULES_OF_COLOUR);
  await page.emulateMedia({ colorScheme: null });
  return [...light, ...dark];
}

/** What the dark can change; all other rules look at the same page twice. */
const RULES_OF_COLOUR = ['color-contrast', 'link-in-text-block'];

async function faultsIn(page: Page, colorScheme: 'light' | 'dark', rules?: string[]): Promise<string[]> {
  await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules ? axe.withRules(rules) : axe).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${colorScheme}: ${id}: ${help}: ${target.join(' ')}`));
}
