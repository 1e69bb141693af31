/** Photographs as a tablet's camera makes them: turned, large, and with the place they were taken at. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { withExif } from '../support/exifSegment.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginVisit } from './support/recordSurvey.ts';

const words = texts.photographs;
const WISH = {
  dateTimeOriginal: '2021:05:04 09:12:33',
  offsetTimeOriginal: '+02:00',
  orientation: 6,
  hasPosition: true,
};

let browser: Browser;
let watched: WatchedPage;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  watched = await openApp(await browser.newContext());
  page = watched.page;
  await beginVisit(page);
});
afterAll(() => browser.close());

/** A JPEG of 2400 × 1200 pixels, red on its left half, blue on its right, with a camera's Exif put into it. */
async function photograph(name: string) {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2400, 1200];
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no canvas');
    context.fillStyle = '#d00000';
    context.fillRect(0, 0, 1200, 1200);
    context.fillStyle = '#0000d0';
    context.fillRect(1200, 0, 1200, 1200);
    return canvas.toDataURL('image/jpeg').split(',')[1] ?? '';
  });
  return { name, mimeType: 'image/jpeg', buffer: Buffer.from(withExif(Buffer.from(base64, 'base64'), WISH)) };
}

type Stored = {
  caption: string;
  takenAt: string | null;
  widthPx: number;
  heightPx: number;
  bytes: string;
  colours: string[];
};

/** From the browser's database itself; the colours are of the picture's top and bottom. */
function stored(): Promise<Stored[]> {
  return page.evaluate(async () => {
    const done = <Value>(request: IDBRequest<Value>) =>
      new Promise<Value>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open('stillpin'));
    const store = (name: string) => database.transaction(name).objectStore(name);
    const rows = await done(store('photographs').getAll());
    const files = await done(store('photographFiles').getAll());
    database.close();
    return Promise.all(
      rows.map(async (row) => {
        const { bytes } = files.find((file) => file.id === row.id);
        const picture = await createImageBitmap(new Blob([bytes], { type: row.mediaType }));
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [picture.width, picture.height];
        const context = canvas.getContext('2d', { willReadFrequently: true });
        context?.drawImage(picture, 0, 0);
        const colourAt = (x: number, y: number) => {
          const [red = 0, , blue = 0] = context?.getImageData(x, y, 1, 1).data ?? [];
          return red > blue ? 'red' : 'blue';
        };
        const { caption, takenAt, widthPx, heightPx } = row;
        const colours = [colourAt(picture.width / 2, 20), colourAt(picture.width / 2, picture.height - 20)];
        return { caption, takenAt, widthPx, heightPx, colours, bytes: String.fromCharCode(...bytes.subarray(0, 4000)) };
      }),
    );
  });
}

const add = async (files: Awaited<ReturnType<typeof photograph>>[]) => {
  await page.getByLabel(words.choose, { exact: true }).first().setInputFiles(files);
  await page.getByText(words.added(files.length)).waitFor();
};

it('keeps a picture upright and smaller, with its date and without its place', async () => {
  await page.getByRole('link', { name: words.open(0) }).click();
  await add([await photograph('block.jpg')]);
  const [kept] = await stored();
  expect(kept).toMatchObject({ takenAt: '2021-05-04T09:12:33+02:00', widthPx: 1000, heightPx: 2000 });
  expect(kept?.colours).toEqual(['red', 'blue']); // the left side of a picture turned a quarter clockwise is its top
  expect(kept?.bytes).not.toContain('Exif');
  await page.getByText(words.takenOn('4 May 2021')).waitFor();
});

it('keeps the file as it is where that is wished', async () => {
  const file = await photograph('label.jpg');
  await page.getByLabel(words.keepFile).check();
  await add([file]);
  await page.getByLabel(words.keepFile).uncheck();
  const whole = (await stored()).find(({ bytes }) => bytes.includes('Exif'));
  expect(whole?.bytes).toBe(file.buffer.subarray(0, 4000).toString('latin1'));
  expect(whole).toMatchObject({ widthPx: 1200, heightPx: 2400, takenAt: '2021-05-04T09:12:33+02:00' });
});

it('says which file is no picture, and adds the others', async () => {
  const broken = { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') };
  await page
    .getByLabel(words.choose, { exact: true })
    .first()
    .setInputFiles([broken, await photograph('bridge.jpg')]);
  await page.getByText(words.notPictures('notes.jpg')).waitFor();
  expect(await stored()).toHaveLength(3);
});

it('is captioned, given to a note, deleted and brought back', async () => {
  const list = page.getByRole('list', { name: words.list });
  await list.getByRole('button').first().click();
  await page.getByLabel(words.dialog.caption).fill('The bridge at C5');
  await page.getByLabel(words.dialog.note, { exact: true }).fill('C9');
  await page.getByRole('button', { name: texts.common.save }).click();
  await page.getByText(words.dialog.noteFault).waitFor();
  await page.getByLabel(words.dialog.note, { exact: true }).fill('C5');
  await page.getByLabel(words.dialog.string, { exact: true }).selectOption('1');
  await page.getByRole('button', { name: texts.common.save }).click();
  await list.getByText('The bridge at C5').waitFor();
  await list.getByText(/^C5, left string/).waitFor();
  await list.getByRole('button', { name: words.show('The bridge at C5') }).click();
  await page.getByRole('button', { name: words.dialog.delete }).click();
  await expect.poll(() => list.getByRole('button').count()).toBe(2);
  await page.getByRole('button', { name: texts.common.undo }).click();
  await list.getByText('The bridge at C5').waitFor();
});

it('has no serious fault of accessibility, and nothing was complained of', async () => {
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});
