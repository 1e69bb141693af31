/** Nobody let in: every screen is walked, with markup for names, under a host that sends the policy with every file. */
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { SECURITY_HEADERS } from '../../tools/securityPolicy.ts';
import { openBrowser } from './support/openBrowser.ts';
import { type FolderServer, serveFolder } from './support/serveFolder.ts';
import { storedTakes } from './support/storedTakes.ts';

const TAKES = ['mp3', 'ogg', 'flac'].map((ending) =>
  fileURLToPath(new URL(`../../sample-audio/a4-one-string.${ending}`, import.meta.url)),
);
/** Text that does harm where it becomes markup. */
const MARKUP = '<img src="https://example.com/x.png" onerror="document.title=\'taken\'"><b>Hall</b>';

let server: FolderServer;
let browser: Browser;
let page: Page;
const requests: string[] = [];
const complaints: string[] = [];

beforeAll(async () => {
  server = await serveFolder(inject('appFolder'), SECURITY_HEADERS);
  browser = await openBrowser({ kind: 'none' });
  const context = await browser.newContext();
  context.on('request', (request) => requests.push(request.url()));
  page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(server.url);
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

/** The address of a screen without its subject: neither id nor note nor string. */
function screenOf(href: string): string {
  return href.replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, 'ID').replace(/\/\d+(?=\/|$)/g, '/N');
}

/** Gives an instrument of many years and its latest visit markup for words, and stays there. */
async function nameInMarkup(): Promise<void> {
  const change = async (field: string) => {
    await page.goto(`${page.url()}/edit`);
    await page.getByRole('textbox', { name: field, exact: true }).fill(MARKUP);
    await page.getByRole('button', { name: texts.common.save }).click();
  };
  await page.getByRole('link', { name: 'The school hall upright' }).click();
  await page.getByRole('heading', { level: 1, name: 'The school hall upright' }).waitFor();
  await change(texts.workshop.form.name);
  await page.getByRole('heading', { level: 1, name: MARKUP }).waitFor();
  await page.getByRole('table', { name: texts.instrument.visits.caption }).getByRole('link').first().click();
  await page.getByRole('table', { name: texts.visit.surveys.caption }).waitFor();
  await change(texts.visit.form.remark);
  await page.getByText(MARKUP).first().waitFor();
}

/** Opens one page of every kind that a link leads to, beginning here. */
async function walkAllScreens(): Promise<Set<string>> {
  const seen = new Set<string>();
  const waiting = [await page.evaluate(() => location.hash || '#/')];
  for (let href = waiting.shift(); href !== undefined; href = waiting.shift()) {
    if (seen.has(screenOf(href))) continue;
    seen.add(screenOf(href));
    await page.evaluate((hash) => {
      location.hash = hash;
    }, href);
    await page.locator('main h1').first().waitFor();
    await page.waitForTimeout(300); // charts are loaded after the page
    const links = await page.locator('a[href^="#"]').evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    for (const link of links) if (link !== null && !seen.has(screenOf(link))) waiting.push(link);
  }
  return seen;
}

it('shows text as text on every screen, and asks no other host for anything', async () => {
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  await nameInMarkup();
  const screens = await walkAllScreens();
  expect(screens.size).toBeGreaterThan(25);
  expect(await page.locator('main img[onerror], main b').count()).toBe(0);
  expect(await page.title()).not.toBe('taken');
  expect(requests.filter((url) => !url.startsWith(server.url) && !/^(data|blob):/.test(url))).toEqual([]);
  expect(complaints).toEqual([]);
});

it('still reads recordings of every kind', async () => {
  await page.goto(`${server.url}#/instruments/new`);
  await page.getByLabel(texts.workshop.form.name).fill('Practice room upright');
  await page.getByRole('button', { name: texts.common.save }).click();
  await page.getByRole('link', { name: texts.instrument.newVisit }).click();
  await page.getByRole('button', { name: texts.visit.form.saveAndGo }).click();
  const storedCount = async () => (await storedTakes(page)).length;
  const before = await storedCount();
  await page.getByLabel(texts.recordings.title, { exact: true }).setInputFiles([...TAKES]);
  await expect.poll(storedCount, { timeout: 60_000, interval: 500 }).toBe(before + TAKES.length);
  expect(complaints).toEqual([]);
});

it('refuses code from text, markup from text, and other hosts', async () => {
  const refusals = await page.evaluate(async () => {
    const attempt = async (what: () => unknown) => {
      await new Promise((resolve) => setTimeout(resolve, 10)); // what the test itself sends may do more than the page
      try {
        await what();
        return 'done';
      } catch {
        return 'refused';
      }
    };
    return Promise.all([
      attempt(() => new Function('return 1')()),
      attempt(() => {
        document.createElement('div').innerHTML = '<b>x</b>';
      }),
      attempt(() => fetch('https://example.com/')),
      attempt(() => new Worker('https://example.com/worker.js')),
    ]);
  });
  expect(refusals).toEqual(['refused', 'refused', 'refused', 'refused']);
});
