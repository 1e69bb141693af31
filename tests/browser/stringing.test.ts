import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { drawWholePage } from './support/drawWholePage.ts';
import { pressOn, tabTo, typeInto } from './support/keyboardWalk.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { storedRows } from './support/storedRows.ts';

/** A stringing schedule, entered without a pointer, pasted from a spreadsheet, and worked out. Each step stands on the one before. */
let browser: Browser;
let watched: WatchedPage;
let page: Page;

const words = texts.stringing;
const CSV = readFileSync(new URL('../reference/stringing/schedule88.csv', import.meta.url), 'utf8');

beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
  watched = await openApp(await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] }));
  page = watched.page;
  await page.evaluate(() => {
    location.hash = '#/instruments/new';
  });
  await typeInto(page, page.getByLabel(texts.workshop.form.name), 'Bench grand');
  await pressOn(page, page.getByRole('button', { name: texts.common.save }));
  await pressOn(page, page.getByRole('link', { name: words.link }));
  await pressOn(page, page.getByRole('button', { name: words.schedules.beginAsItIs }));
  await page.getByRole('grid').waitFor();
});
afterAll(() => browser.close());

/** Row 0 is A0; columns as in the sheet: strings, length, wire, core, wrap, grade, bridge. */
const cell = (row: number, column: number) => page.locator(`[data-row="${row}"][data-column="${column}"]`);
const textOf = async (row: number, column: number) => (await cell(row, column).textContent())?.trim();
const hasFocus = (row: number, column: number) =>
  cell(row, column).evaluate((element) => element === document.activeElement);
const stored = () => page.locator('[data-writing="saved"]').waitFor();

async function keys(...pressed: readonly string[]) {
  for (const key of pressed) await page.keyboard.press(key);
}

async function storedScheduleRows() {
  await stored();
  const [schedule] = await storedRows(page, 'schedules', ['rows']);
  return schedule?.rows as { midi: number; speakingLengthMm: number | null; interpolated: string[] }[];
}

/** The sheet is one stop of the Tab key: the cell where one stood. */
const backToSheet = () => page.locator('[role="grid"] [tabindex="0"]').focus();

async function pasteText(text: string) {
  await page.evaluate((content) => navigator.clipboard.writeText(content), text);
  await page.keyboard.press('Control+v');
}

it('takes a row of entries from the keyboard alone, and goes on below it', async () => {
  await tabTo(page, cell(0, 0));
  await page.keyboard.type('1');
  await keys('Tab');
  await page.keyboard.type('1385,5');
  await keys('Tab');
  await page.keyboard.type('5.6');
  await keys('Tab');
  await page.keyboard.type('1.5');
  await keys('Tab');
  await page.keyboard.type('c');
  await keys('Enter');
  expect(await hasFocus(1, 0)).toBe(true);
  expect(await textOf(0, 1)).toBe('1385.5');
  expect(await textOf(0, 4)).toBe('copper');
  expect((await storedScheduleRows())[0]).toMatchObject({ midi: 21, speakingLengthMm: 1385.5 });
});

it('refuses what is no figure, says why, and offers what may have been meant', async () => {
  await keys('ArrowRight', 'ArrowRight');
  await page.keyboard.type('17');
  await keys('Enter');
  const alert = page.getByRole('alert').filter({ hasText: /A♯0, Wire/ });
  await alert.waitFor();
  expect(await alert.textContent()).toMatch(/0\.975\smm \(metric 17\) or 0\.991\smm \(inch 17\)/);
  await keys('Escape');
  expect(await textOf(1, 2)).toBe('');
  expect(await hasFocus(1, 2)).toBe(true);
  await page.keyboard.type('17');
  await keys('Enter');
  await pressOn(page, alert.getByRole('button', { name: words.sheet.use('0.975\u00a0mm') }));
  expect(await textOf(1, 2)).toMatch(/^0\.975\s+metric 17/);
  expect(await hasFocus(2, 2)).toBe(true);
});

it('changes a cell with F2, empties and fills several, and takes steps back and forth', async () => {
  await keys('ArrowUp', 'F2', 'End');
  await page.keyboard.type('1');
  await keys('Enter');
  expect(await textOf(1, 2)).toMatch(/^0\.9751/);
  await keys('ArrowUp', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Control+d');
  expect(await textOf(3, 2)).toMatch(/^0\.9751/);
  await keys('Delete');
  expect(await textOf(1, 2)).toBe('');
  await keys('Control+z');
  expect(await textOf(3, 2)).toMatch(/^0\.9751/);
  await keys('Control+z');
  expect(await textOf(3, 2)).toBe('');
  await keys('Control+y');
  expect(await textOf(3, 2)).toMatch(/^0\.9751/);
  await keys('Control+z', 'Control+z', 'Control+z');
  expect(await textOf(1, 2)).toBe('');
});

it('interpolates empty lengths, marks them, and stores the marks', async () => {
  await keys('Escape', 'ArrowLeft', 'ArrowDown', 'ArrowDown', 'ArrowDown');
  await page.keyboard.type('1340');
  await keys('Enter');
  await page.getByRole('button', { name: words.sheet.buttons.interpolate }).click();
  await page.getByText(words.sheet.interpolated2(5)).waitFor();
  expect(await textOf(2, 1)).toContain(words.sheet.interpolated);
  expect(await cell(2, 1).locator('em').textContent()).toMatch(/^≈ 13\d\d/);
  expect((await storedScheduleRows())[2]?.interpolated).toContain('speakingLengthMm');
  await page.getByRole('button', { name: words.sheet.buttons.undo }).click();
  expect(await textOf(2, 1)).toBe('');
});

it('shows what of a paste cannot be read before any of it is put in', async () => {
  await backToSheet();
  await pasteText(
    'note\tspeaking_length_mm\twire_diameter_mm\tcolour\nC4\t640,5\t1,0\tred\nD4\tlong\t1.0\tred\nX9\t1\t1\tred',
  );
  const dialog = page.getByRole('dialog');
  await dialog.getByText(/Line 3, cell 2: D4, Speaking length: “long” is no number/).waitFor();
  await dialog.getByText(/Line 4, cell 1: “X9” is no note/).waitFor();
  await dialog.getByText(words.sheet.paste.unknownColumns('colour')).waitFor();
  expect(await textOf(39, 1)).toBe('');
  await pressOn(page, dialog.getByRole('button', { name: words.sheet.paste.takeRest }));
  expect(await textOf(39, 1)).toBe('640.5');
  await keys('Control+z');
  expect(await textOf(39, 1)).toBe('');
});

it('pastes eighty-eight rows of a spreadsheet with decimal commas, and works the scale out as it was worked out apart', async () => {
  const spreadsheet = CSV.trim()
    .split('\n')
    .map((line, index) =>
      line
        .split(',')
        .map((part) => (index === 0 ? part : part.replace('.', ',')))
        .join('\t'),
    )
    .join('\r\n');
  await pasteText(spreadsheet);
  await page.getByText(/cells in 88 rows pasted/).waitFor();
  expect(await textOf(87, 2)).toMatch(/^0\.775/);
  // tests/reference/stringing/scheduleTotals.py: 162278.324972 N at 440 Hz, 158611.136584 N at 435 Hz; bass 31456, long 130822 N.
  await page.getByText(/162\.3\skN \(16\.5\stonnes-force\), of 232 strings/).waitFor();
  await page.getByText(/A4 = 435\sHz: 158\.6\skN/).waitFor();
  const sections = page.getByRole('table', { name: words.scale.sections.caption }).locator('tbody tr');
  expect(await sections.allTextContents()).toEqual([
    expect.stringMatching(/A0 to F♯2.*31\.5\skN/),
    expect.stringMatching(/G2 to C8.*130\.8\skN/),
  ]);
  await page.getByText(words.scale.table).first().click();
  const notes = page.getByRole('table', { name: words.scale.caption }).getByRole('row');
  // The same script: one string of A0 pulls 1010.956 N, of A4 664.498 N, of C8 701.827 N.
  for (const [note, newtons] of [
    ['A0', '1011'],
    ['A4', '664'],
    ['C8', '702'],
  ])
    expect(await notes.filter({ hasText: new RegExp(`^${note}`) }).textContent()).toMatch(new RegExp(`${newtons}\\sN`));
  await page.locator('svg.recharts-surface').first().waitFor();
});

it('works the pull out at another pitch, and says which table the strength is from', async () => {
  await page.getByRole('radio', { name: words.scale.pitchChoices[435] }).check();
  await page.getByText(/158\.6\skN \(16\.2\stonnes-force\), of 232 strings/).waitFor();
  await page.getByRole('radio', { name: words.scale.pitchChoices.schedule }).check();
  await page
    .getByText(/Strength from: EN 10270-1 SM for/)
    .first()
    .waitFor();
});

it('undoes all of the paste at once, and does it again', async () => {
  await backToSheet();
  await keys('Control+z');
  expect(await textOf(87, 2)).toBe('');
  expect((await storedScheduleRows())[87]?.speakingLengthMm).toBe(null);
  await keys('Control+y');
  expect((await storedScheduleRows())[87]?.speakingLengthMm).toBeGreaterThan(40);
});

it('shows what thicker wire would do, and keeps it as a plan beside the schedule', async () => {
  await page.locator('#try-from').fill('C5');
  await page.locator('#try-amount').fill('1');
  await page.getByText(words.tryOut.triedName('C5 to C8, wire +1 sizes')).first().waitFor();
  await page.getByText(/All strings together: \+\d/).waitFor();
  await page.getByRole('button', { name: words.tryOut.keep }).click();
  await page
    .getByRole('option', { name: /Plan 1 \(planned/ })
    .first()
    .waitFor({ state: 'attached' });
  await page.getByText(words.compare.facts.before('Plan 1')).waitFor();
  await page.getByText(words.compare.facts.before(words.schedules.asItIsName)).waitFor();
  expect(await storedRows(page, 'schedules', ['kind'])).toHaveLength(2);
});

it('takes a wire table of one’s own and uses it in the grade column', async () => {
  await page.getByRole('button', { name: words.grades.add }).click();
  await page.locator('#grade-name').fill('Old wire');
  await page.getByRole('button', { name: texts.common.save, exact: true }).click();
  await page.getByText(words.grades.form.faults['no-source']).waitFor();
  await page.getByLabel(words.grades.form.source).fill('Pulled to breaking in the workshop');
  await page.getByLabel(words.grades.form.rows).fill('0,7 1500\n1,6 1300');
  await page.getByRole('button', { name: texts.common.save, exact: true }).click();
  await page.getByRole('table', { name: words.grades.caption }).getByText('Old wire').waitFor();
  await backToSheet();
  await keys('Control+End', 'ArrowLeft');
  await page.keyboard.type('old wire');
  await keys('Enter');
  await page
    .getByText(/Old wire for C8/)
    .first()
    .waitFor();
});

it('loses nothing where one leaves at once', async () => {
  await backToSheet();
  await keys('Control+Home');
  await page.keyboard.type('2');
  await keys('Enter');
  await page.evaluate(() => history.back());
  await page.getByRole('link', { name: words.link }).waitFor();
  await page.getByRole('link', { name: words.link }).click();
  await page.getByRole('grid').waitFor();
  await page.getByLabel(words.schedules.choose).selectOption({ label: 'Plan 1 (planned, A4 = 440\u00a0Hz)' });
  expect(await textOf(0, 0)).toBe('2');
});

it('comes back as it was stored', async () => {
  await stored();
  await page.reload();
  await page.getByRole('grid').waitFor();
  expect(await textOf(87, 2)).toMatch(/^0\.775/);
});

it('has no fault of accessibility with a cell open and a text refused, on an instrument of seven notes', async () => {
  await page.evaluate(() => {
    location.hash = '#/instruments/new';
  });
  const { form } = texts.workshop;
  await page.getByLabel(form.name).fill('Seven notes');
  await page.getByRole('group', { name: form.compass }).getByLabel(form.compassOther).check();
  await page.getByLabel(form.lowest, { exact: true }).fill('C4');
  await page.getByLabel(form.highest, { exact: true }).fill('F#4');
  await page.getByRole('button', { name: texts.common.save }).click();
  await page.getByRole('link', { name: words.link }).click();
  await page.getByRole('button', { name: words.schedules.beginAsItIs }).click();
  await cell(0, 0).click();
  await pasteText('3\t640\t1\t\t\tA228\n3\t660\t1\n');
  await page.locator('figure').first().waitFor();
  await drawWholePage(page);
  await page.locator('svg.recharts-surface').first().waitFor();
  await page.getByText(words.sheet.complaints.title(1)).click();
  await cell(3, 2).click();
  await page.keyboard.type('17');
  await keys('Enter');
  await page
    .getByRole('alert')
    .filter({ hasText: /D♯4, Wire/ })
    .waitFor();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(watched.complaints).toEqual([]);
});
