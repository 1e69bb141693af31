/** Keeping, copying, bringing in and deleting, as two people with a device each do it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginVisit } from './support/recordSurvey.ts';

const words = texts.records;
const NAME = 'Grand in the small hall';
let browser: Browser;
let folder: string;
let mine: WatchedPage;
let yours: WatchedPage;

/** In place of the dialog for a folder, which no test can answer: the browser's own private folder, which works alike. */
const chooseOwnFolder = () => {
  Object.assign(window, { showDirectoryPicker: () => navigator.storage.getDirectory() });
};

async function openDevice(): Promise<WatchedPage> {
  const context = await browser.newContext({ acceptDownloads: true });
  await context.addInitScript(chooseOwnFolder);
  return openApp(context);
}

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  folder = mkdtempSync(join(tmpdir(), 'records-'));
  mine = await openDevice();
  yours = await openDevice();
  await beginVisit(mine.page);
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

const openRecordsScreen = async (page: Page) => {
  await page.goto(`${inject('appUrl')}#/records`);
  await page.getByRole('heading', { level: 1, name: words.title }).waitFor();
};

async function saved(page: Page, name: string): Promise<string> {
  await openRecordsScreen(page);
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: words.backup.download }).click();
  const path = join(folder, name);
  await (await downloading).saveAs(path);
  return path;
}

async function bringIn(page: Page, path: string): Promise<void> {
  await openRecordsScreen(page);
  await page.getByLabel(words.import.choose).setInputFiles(path);
  await page.getByRole('button', { name: words.import.bringIn }).click();
  await page.getByText(/^Brought in: /).waitFor();
}

async function setRemark(page: Page, remark: string): Promise<void> {
  await page.getByRole('link', { name: texts.common.productName }).click();
  await page.getByRole('link', { name: NAME }).click();
  await page.getByRole('link', { name: texts.instrument.edit }).click();
  await page.getByRole('textbox', { name: texts.workshop.form.remark }).fill(remark);
  await page.getByRole('button', { name: texts.common.save }).click();
  await page.getByText(remark).waitFor();
}

it('backs up as a file, and the other device shows what is in it before anything changes', async () => {
  const path = await saved(mine.page, 'backup.zip');
  await openRecordsScreen(yours.page);
  await yours.page.getByLabel(words.import.choose).setInputFiles(path);
  await yours.page.getByRole('row', { name: NAME }).waitFor();
  await yours.page.getByRole('button', { name: texts.common.putAway }).click();
  await yours.page.getByRole('link', { name: texts.common.productName }).click();
  await yours.page.getByRole('heading', { name: texts.workshop.empty.title }).waitFor();
  await bringIn(yours.page, path);
  await yours.page.getByRole('link', { name: texts.common.productName }).click();
  await yours.page.getByRole('link', { name: NAME }).waitFor();
});

it('writes backups into a chosen folder, whole, and remembers the folder', async () => {
  const { page } = mine;
  await openRecordsScreen(page);
  await page.getByRole('button', { name: words.backup.chooseFolder }).click();
  const files = () =>
    page.evaluate(async () => {
      const found: string[] = [];
      const root = await navigator.storage.getDirectory();
      for await (const [name, handle] of root as unknown as AsyncIterable<[string, FileSystemFileHandle]>)
        found.push(`${name}: ${(await handle.getFile()).size > 1000 ? 'whole' : 'begun'}`);
      return found;
    });
  await expect.poll(files).toEqual([expect.stringMatching(/^stillpin-backup-\d{4}-\d{2}-\d{2}-\d{4}\.zip: whole$/)]);
  await page.reload();
  await page.getByRole('button', { name: /^Back up to the folder/ }).waitFor();
});

it('meets in a shared folder: adds what is new once, and remembers the folder', async () => {
  const { page } = mine;
  const meeting = page.getByRole('region', { name: words.meeting.title });
  await openRecordsScreen(page);
  await meeting.getByRole('button', { name: words.meeting.choose }).click();
  await meeting.getByText(words.meeting.done('0 new files', '0 records', true)).waitFor();
  await meeting.getByRole('button', { name: /^Meet in the folder/ }).click();
  await meeting.getByText(words.meeting.done('0 new files', '0 records', false)).waitFor();
});

it('refuses a file that is cut short, and says so', async () => {
  const { page } = yours;
  const whole = readFileSync(join(folder, 'backup.zip'));
  await openRecordsScreen(page);
  const short = { name: 'short.zip', mimeType: 'application/zip', buffer: whole.subarray(0, whole.length / 2) };
  await page.getByLabel(words.import.choose).setInputFiles(short);
  await page.getByText(words.import.refused).waitFor();
  expect(await page.getByRole('button', { name: words.import.bringIn }).count()).toBe(0);
});

it('keeps both versions of what both changed until somebody chooses', async () => {
  await setRemark(mine.page, 'Heard a buzz at C4.');
  await setRemark(yours.page, 'The buzz was the lid.');
  await bringIn(yours.page, await saved(mine.page, 'changed.zip'));
  const { page } = yours;
  await page.getByRole('heading', { name: words.rivals.title }).waitFor();
  const row = page.getByRole('row', { name: /remark/ });
  for (const remark of ['Heard a buzz at C4.', 'The buzz was the lid.']) await row.getByText(remark).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  const [, shown = '', other = ''] = await row.locator('th, td').allTextContents();
  expect(shown).not.toBe(other);
  await page.getByRole('button', { name: new RegExp(`^${words.rivals.takeOther}`) }).click();
  await page.getByRole('heading', { name: words.rivals.title }).waitFor({ state: 'hidden' });
  await page.getByRole('link', { name: texts.common.productName }).click();
  await page.getByRole('link', { name: NAME }).click();
  await page.getByText(other, { exact: true }).waitFor();
});

it('deletes with the way back at the foot of the page, in the bin, and not at all once it is taken away for good', async () => {
  const { page } = mine;
  const remove = async () => {
    await page.getByRole('link', { name: texts.common.productName }).click();
    await page.getByRole('link', { name: NAME }).click();
    await page.getByRole('link', { name: texts.instrument.edit }).click();
    await page.getByRole('button', { name: words.delete.instrument }).click();
    await page.getByRole('heading', { name: texts.workshop.empty.title }).waitFor();
  };
  await remove();
  await page.getByRole('button', { name: texts.common.undo }).click();
  await page.getByRole('link', { name: NAME }).waitFor();
  await remove();
  await openRecordsScreen(page);
  await page.getByRole('button', { name: words.bin.restoreLabel(NAME) }).click();
  await page.getByText(words.bin.empty).waitFor();
  await remove();
  await openRecordsScreen(page);
  await page.getByRole('button', { name: words.bin.purge }).click();
  await page.getByRole('button', { name: words.bin.purgeYes, exact: true }).click();
  await page.getByText(words.bin.purged).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('deletes several instruments at once, and brings them back together', async () => {
  const { page } = await openDevice();
  for (const name of ['First upright', 'Second upright', 'Third upright']) {
    await page.getByRole('link', { name: texts.workshop.add }).click();
    await page.getByLabel(texts.workshop.form.name).fill(name);
    await page.getByRole('button', { name: texts.common.save }).click();
    await page.getByRole('heading', { level: 1, name }).waitFor();
    await page.getByRole('link', { name: texts.common.productName }).click();
  }
  await openRecordsScreen(page);
  const bin = page.getByRole('region', { name: words.bin.title, exact: true });
  await bin.getByText(words.bin.several.title).click();
  for (const name of ['First upright', 'Third upright']) await bin.getByLabel(name).check();
  await bin.getByRole('button', { name: words.bin.several.action }).click();
  await page.getByText(words.bin.several.deleted(2)).waitFor();
  await bin.getByRole('button', { name: words.bin.restoreAll }).click();
  await bin.getByText(words.bin.restored(2)).waitFor();
  await bin.getByText(words.bin.empty).waitFor();
  await page.context().close();
});

it('reminds of a backup once surveys are at stake, and can be put off', async () => {
  const { page } = await openDevice();
  await beginVisit(page);
  await page.getByRole('button', { name: texts.visit.start.action['as-found'] }).click();
  await page.getByRole('button', { name: texts.recording.start }).waitFor();
  const workshop = () => page.getByRole('link', { name: texts.common.productName }).click();
  await workshop();
  await page.getByRole('link', { name: NAME }).waitFor();
  expect(await page.getByText(words.care.none(1)).count()).toBe(0);
  await page.clock.setSystemTime(Date.now() + 2 * 86_400_000);
  await page.getByRole('link', { name: NAME }).click();
  await workshop();
  await page.getByText(words.care.none(1)).waitFor();
  await page.getByRole('button', { name: words.care.later }).click();
  await page.getByText(words.care.none(1)).waitFor({ state: 'hidden' });
  await page.context().close();
});

it('says that room is getting scarce before a survey finds none', async () => {
  const { page } = await openDevice();
  await page.addInitScript(() => {
    Object.assign(navigator.storage, { estimate: async () => ({ usage: 9_960e6, quota: 10_000e6 }) });
  });
  await page.reload();
  await page.getByText(words.storage.figuresOnly('40\u00a0MB')).waitFor();
  await page.getByRole('link', { name: words.storage.open }).click();
  await page.getByRole('heading', { level: 1, name: words.title }).waitFor();
  await page.context().close();
});

it('nothing was complained of', () => {
  expect([...mine.complaints, ...yours.complaints]).toEqual([]);
});
