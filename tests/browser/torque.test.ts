import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { pressOn, typeInto } from './support/keyboardWalk.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';

/** Torques of a few pins, entered without a pointer, put right, and looked at over the block. Each step stands on the one before. */
let browser: Browser;
let watched: WatchedPage;
let page: Page;

const words = texts.torque;

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  watched = await openApp(await browser.newContext());
  page = watched.page;
  await page.evaluate(() => {
    location.hash = '#/instruments/new';
  });
  await typeInto(page, page.getByLabel(texts.workshop.form.name), 'Practice room upright');
  await typeInto(page, page.getByLabel(texts.workshop.form.struts), 'B4');
  await typeInto(page, page.getByLabel(texts.workshop.form.pinDiameter), '7,16');
  await page.getByLabel(texts.workshop.form.pinBlockKind).selectOption('laminated');
  await pressOn(page, page.getByRole('button', { name: texts.common.save }));
  await pressOn(page, page.getByRole('link', { name: texts.instrument.newVisit }));
  await typeInto(page, page.getByLabel(texts.visit.form.humidity), '44');
  await pressOn(page, page.getByRole('button', { name: texts.visit.form.saveAndGo }));
  await pressOn(page, page.getByRole('link', { name: words.open }));
  await value().waitFor();
});
afterAll(() => browser.close());

const value = () => page.getByLabel(words.desk.value, { exact: true });
const pin = (name: string) => page.getByText(words.desk.pin(name, 'centre string'), { exact: true });
const rows = () => page.getByRole('table', { name: words.readings.caption }).locator('tbody tr');

async function enter(text: string) {
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

it('takes a figure and goes to the next pin, from the keyboard alone', async () => {
  expect(await value().evaluate((field) => field === document.activeElement)).toBe(true);
  await enter('c5');
  await pin('C5').waitFor();
  for (const [figure, next] of [
    ['8.5', 'C♯5'],
    ['3,2', 'D5'],
    ['75 in lb', 'D♯5'],
  ] as const) {
    await enter(figure);
    await pin(next).waitFor();
  }
  expect(await rows().count()).toBe(3);
  expect(await rows().nth(2).textContent()).toMatch(/D5.*8\.5.*75/s);
});

it('says what is wrong with a figure and stores nothing', async () => {
  await enter('75');
  await page.getByText(/more than a wrench for tuning pins reads/).waitFor();
  expect(await value().inputValue()).toBe('75');
  expect(await rows().count()).toBe(3);
  await value().fill('');
});

it('takes the last entry back, and lets a stored one be changed and removed', async () => {
  await page.keyboard.press('Control+z');
  await pin('D5').waitFor();
  await rows().nth(2).waitFor({ state: 'detached' });
  await pressOn(page, page.getByRole('button', { name: words.readings.changeLabel('C♯5, centre string') }));
  await pin('C♯5').waitFor();
  await enter('3.6');
  await page.getByText(/3\.6\sN·m .* stored in place of 3\.2\sN·m/).waitFor();
  expect(await rows().count()).toBe(2);
  await pressOn(page, page.getByRole('button', { name: words.readings.removeLabel('C5, centre string') }));
  await rows().nth(1).waitFor({ state: 'detached' });
  await pressOn(page, page.getByRole('button', { name: texts.common.undo }));
  await rows().nth(1).waitFor();
});

it('remembers what the wrench of this device reads', async () => {
  await page.getByRole('radio', { name: 'in·lb' }).check();
  await page.reload();
  await value().waitFor();
  expect(await page.getByRole('radio', { name: 'in·lb' }).isChecked()).toBe(true);
  await enter('D5');
  await enter('80');
  await rows().nth(2).waitFor();
  expect(await rows().nth(2).textContent()).toMatch(/9\.0.*80/s);
});

it('has no fault of accessibility while it is entered', async () => {
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('draws the pins over the block and says that no slip is known yet', async () => {
  await pressOn(page, page.getByRole('link', { name: words.openOfInstrument }));
  await page.locator('svg.recharts-surface').first().waitFor();
  await page.getByText(words.slip.none).waitFor({ timeout: 60_000 });
  await page.getByText(words.load.noSchedule).waitFor();
  expect(await page.getByRole('table', { name: words.over.sections.caption }).locator('tbody tr').count()).toBe(1);
  expect(await accessibilityFaults(page)).toEqual([]);
});

it('lists what held across instruments, and says where there is nothing to count from', async () => {
  await page.evaluate(() => {
    location.hash = '#/held';
  });
  await page.getByText(texts.held.empty.work).waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});
