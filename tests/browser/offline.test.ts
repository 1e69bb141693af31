import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { drawWholePage } from './support/drawWholePage.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginSurvey } from './support/recordSurvey.ts';
import { type FolderServer, serveFolder } from './support/serveFolder.ts';
import { storedTakes } from './support/storedTakes.ts';

const PLAYED = fileURLToPath(new URL('../../sample-audio/a4-one-string.wav', import.meta.url));

let folder: string;
let server: FolderServer;
let browser: Browser;
let page: Page;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'offline-'));
  cpSync(inject('appFolder'), folder, { recursive: true });
  server = await serveFolder(folder);
  browser = await openBrowser({ kind: 'file', path: PLAYED });
  page = await browser.newPage();
  await page.goto(server.url);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
});
afterEach(async () => {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true });
});

const notice = () => page.getByText(texts.common.newVersion.ready);
const emptyWorkshop = () => page.getByRole('heading', { name: texts.workshop.empty.title });

describe('without the server', () => {
  beforeEach(() => server.close());

  it('loads the page anew, records a survey and stores its takes', async () => {
    await page.reload();
    await beginSurvey(page);
    await expect
      .poll(() => storedTakes(page), { timeout: 60_000 })
      .toContainEqual(expect.objectContaining({ midi: 69 }));
  });

  it('opens the page by its address and by its file name, draws the demonstration’s chart, and has the icons', async () => {
    await page.goto(`${server.url}index.html?opened=again`);
    await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
    await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
    await page.getByRole('list', { name: texts.workshop.instruments }).getByRole('link').first().click();
    await page.locator('figure').first().waitFor();
    await drawWholePage(page);
    await page.locator('svg.recharts-surface').first().waitFor();
    const types = await page.evaluate(async () => {
      const manifest = await (await fetch('./stillpin.webmanifest')).json();
      const icons = manifest.icons as { src: string }[];
      return Promise.all(icons.map(async ({ src }) => (await (await fetch(src)).blob()).type));
    });
    expect(types).toEqual(['image/svg+xml', 'image/png', 'image/png', 'image/png']);
  });
});

describe('when the server has a newer version', () => {
  beforeEach(() => {
    const worker = join(folder, 'offlineWorker.js');
    writeFileSync(worker, readFileSync(worker, 'utf8').replace(/"version":"\w+"/, '"version":"newer"'));
    const start = join(folder, 'index.html');
    writeFileSync(start, readFileSync(start, 'utf8').replace('</head>', '<meta name="is-newer"></head>'));
  });

  const lookForNewer = () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      while (!registration.waiting) await new Promise((resolve) => setTimeout(resolve, 20));
    });

  it('says so, and loads it when asked', async () => {
    await lookForNewer();
    await notice().waitFor();
    expect(await page.locator('meta[name="is-newer"]').count()).toBe(0);
    await page.getByRole('button', { name: texts.common.newVersion.load }).click();
    await page.locator('meta[name="is-newer"]').waitFor({ state: 'attached' });
    await emptyWorkshop().waitFor();
    expect(await notice().count()).toBe(0);
  });

  it('says nothing during a recording, and goes on with the version that was loaded', async () => {
    await beginSurvey(page);
    await lookForNewer();
    await expect
      .poll(() => storedTakes(page), { timeout: 60_000 })
      .toContainEqual(expect.objectContaining({ midi: 69 }));
    expect(await notice().count()).toBe(0);
    await page.getByRole('button', { name: texts.recording.buttons.finish }).click();
    await notice().waitFor();
    expect(await page.locator('meta[name="is-newer"]').count()).toBe(0);
  });
});

it('can be installed: Chromium finds nothing wrong with the manifest', async () => {
  const session = await page.context().newCDPSession(page);
  const { errors } = (await session.send('Page.getAppManifest')) as { errors: unknown[] };
  const { installabilityErrors } = (await session.send('Page.getInstallabilityErrors')) as {
    installabilityErrors: { errorId: string }[];
  };
  expect(errors).toEqual([]);
  // A private window, as each test has, is the one obstacle that is not the page's.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
});
