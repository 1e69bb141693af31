import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { englishReportWords } from '../../src/report/words.ts';
import { reportWordsIn } from '../../src/report/wordsIn.ts';
import { germanTexts } from '../../src/ui/texts/german/german.ts';
import { inLanguage } from '../../src/ui/texts/translation.ts';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { drawWholePage } from './support/drawWholePage.ts';
import { onlyIn, textsOn, wordsFound } from './support/englishWords.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';

/** Somebody with a German device looks at every screen of the demonstration workshop. */
const german = inLanguage(texts, germanTexts);
const english = onlyIn([texts, englishReportWords], [german, reportWordsIn('de')]);

/** What the demonstration's records say is nobody's word on a screen, and stays as it was written. */
const INVENTED_REMARK = /^Invented/;

let browser: Browser;
let context: BrowserContext;
let watched: WatchedPage;
let page: Page;
/** The addresses of the screens, by what they show. */
let addresses: ReadonlyMap<string, string>;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  context = await browser.newContext({ locale: 'de-AT', viewport: { width: 390, height: 844 } });
  watched = await openApp(context);
  page = watched.page;
  await page.getByRole('button', { name: german.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: german.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  addresses = await findAddresses();
});
afterAll(() => browser.close());

async function show(address: string): Promise<void> {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, address);
  await page.locator('main h1').first().waitFor();
  await page.waitForLoadState('networkidle');
  for (const busy of [
    german.common.loading,
    german.stability.line.waiting,
    german.stability.judging.working(0).replace('0 ', ''),
  ])
    await page.getByText(busy).first().waitFor({ state: 'hidden', timeout: 60_000 });
  await drawWholePage(page, german.charts.drawing);
}

async function firstLink(pattern: RegExp): Promise<string> {
  const links = await page.locator('main a').evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''));
  const found = links.find((link) => pattern.test(link));
  if (!found) throw new Error(`no link like ${pattern} among ${links.join(' ')}`);
  return found;
}

async function findAddresses(): Promise<Map<string, string>> {
  const hall = page.getByRole('link', { name: 'The school hall upright' });
  const instrument = (await hall.getAttribute('href')) ?? '';
  await show(instrument);
  const visit = await firstLink(/^#\/visits\/[^/]+$/);
  await show(visit);
  const survey = await firstLink(/^#\/surveys\/[^/]+$/);
  await show(survey);
  const take = await firstLink(/^#\/takes\//);
  return new Map([
    ['workshop', '#/'],
    ['instrument', instrument],
    ['its form', `${instrument}/edit`],
    ['a new instrument', '#/instruments/new'],
    ['stability', `${instrument}/stability`],
    ['the owner’s page', `${instrument}/owners-page`],
    ['the long record', `${instrument}/record`],
    ['hearing', `${instrument}/hear`],
    ['torque of the instrument', `${instrument}/torque`],
    ['photographs', `${instrument}/photographs`],
    ['visit', visit],
    ['the form of a visit', `${visit}/edit`],
    ['torque at a visit', `${visit}/torque`],
    ['survey', survey],
    ['recording', `${survey}/record`],
    ['take', take],
    ['strings', `${instrument}/strings`],
    ['work list', `${instrument}/work-list`],
    ['stringing', `${instrument}/stringing`],
    ['how it measures', '#/how-it-measures'],
    ['the microphone’s clock', '#/microphone-clock'],
    ['records', '#/records'],
    ['what held', '#/held'],
    ['nothing', '#/nowhere'],
  ]);
}

it('the device’s language is spoken, and told to whoever reads aloud', async () => {
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
});

it('the test would find English words', () => {
  const some = [texts.common.loading, `x ${texts.stability.verdict.notEnough} y`, 'Undo', '10 visits'];
  expect(wordsFound(some, english)).toEqual(some);
  expect(wordsFound([german.common.loading, 'Werkstatt'], english)).toEqual([]);
});

it('no screen has an English word, or is wider than a phone', async () => {
  const faults: string[] = [];
  for (const [name, address] of addresses) {
    await show(address);
    const found = wordsFound(await textsOn(page), english).filter((text) => !INVENTED_REMARK.test(text));
    faults.push(...found.map((text) => `${name}: ${text.slice(0, 120)}`));
    const excess = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    if (excess > 0) faults.push(`${name}: ${excess} px wider than the window`);
  }
  expect(faults).toEqual([]);
  expect(watched.complaints).toEqual([]);
});

describe('the settings', () => {
  const settings = (words: typeof texts) => page.getByRole('dialog', { name: words.common.settings.title });

  it('can be read by everybody, and are not offered where they would break something off', async () => {
    await show('#/instruments/new');
    await page.getByRole('button', { name: german.common.settings.title }).click();
    await settings(german).getByText(german.common.settings.busy).waitFor();
    await page.keyboard.press('Escape');
    await show('#/');
    await page.getByRole('button', { name: german.common.settings.title }).click();
    await settings(german).getByLabel(german.common.settings.language).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
  });

  it('change language and units, and stay changed', async () => {
    await settings(german).getByLabel(german.common.settings.language).selectOption('en');
    await settings(german).getByLabel(german.common.settings.temperature).selectOption('°F');
    await settings(german).getByRole('button', { name: german.common.settings.use }).click();
    await page.getByRole('heading', { level: 1, name: texts.workshop.title }).waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
    await page.evaluate((hash) => {
      window.location.hash = hash;
    }, addresses.get('visit') ?? '');
    const shown = page.getByText(/^\d+\.\d\u00a0°F$/).first();
    await shown.waitFor();
    const fahrenheit = Number.parseFloat((await shown.textContent()) ?? '');
    await page.getByRole('link', { name: texts.visit.edit }).click();
    const typed = page.getByLabel(texts.visit.form.temperature);
    await expect.poll(async () => Number(await typed.inputValue()).toFixed(1)).toBe(fahrenheit.toFixed(1));
    await page.reload();
    await page.getByRole('heading', { level: 1, name: texts.visit.form.editTitle }).waitFor();
  });
});
