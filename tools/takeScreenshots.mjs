// `npm run pictures [-- FOLDER]`: takes the pictures of docs/pictures anew, from the demonstration workshop.
// The recording is played by a file of sample-audio in the microphone's place.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { build, runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const pictures = process.argv[2] ?? join(root, 'docs', 'pictures');
const SIZE = { width: 1000, height: 720 };

async function load(...path) {
  const { module } = await runnerImport(join(root, ...path), { configFile: false, root, logLevel: 'error' });
  return module;
}
const { findChromium } = await load('tests', 'browser', 'support', 'findChromium.ts');
const { serveFolder } = await load('tests', 'browser', 'support', 'serveFolder.ts');
const { hookMicrophone } = await load('tests', 'browser', 'support', 'microphoneHook.ts');
const { texts } = await load('src', 'ui', 'texts.ts');

/** Each ends on the screen that its picture shows; the next one starts there. */
const STEPS = [
  ['instrument', showInstrument],
  ['survey', showSurvey],
  ['take', showTake],
  ['recording', showRecording],
];

async function showInstrument(page) {
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
  await page.getByRole('link', { name: 'The school hall upright' }).click();
  // From May to October the hall's humidity was the same at both ends, so that what the pin block does stands alone.
  const interval = page.getByRole('option', { name: /^12 May 2025 to 10 October 2025/ });
  await page.getByLabel(texts.instrument.change.interval).selectOption(await interval.getAttribute('value'));
  await page.locator('svg.recharts-surface').first().waitFor();
  await scrollTo(page.getByRole('heading', { name: texts.instrument.change.title }));
}

async function showSurvey(page) {
  await page.getByRole('table', { name: texts.instrument.visits.caption }).getByRole('link').first().click();
  await page.getByRole('table', { name: texts.visit.surveys.caption }).getByRole('link').first().click();
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor();
  await page.evaluate(() => window.scrollTo(0, 0));
}

/** The first string of this survey that beats by itself. */
async function showTake(page) {
  const row = page.getByRole('row').filter({ hasText: texts.take.beatKinds['false beat'] }).first();
  await row.getByRole('link').first().click();
  await page.getByRole('table', { name: texts.take.partialsCaption }).waitFor();
  await page.evaluate(() => window.scrollTo(0, 0));
}

/** The first sixteen notes of an as-left survey. */
async function showRecording(page) {
  await page
    .getByRole('navigation', { name: texts.common.trail })
    .getByRole('link', { name: /^Visit/ })
    .click();
  await page.getByRole('button', { name: texts.visit.start.action['as-left'] }).click();
  await page.getByRole('button', { name: texts.recording.start }).click();
  const heard = page.getByRole('region', { name: texts.recording.heard, exact: true });
  await heard.getByText('C2', { exact: true }).waitFor({ timeout: 60_000 });
  await heard.getByText(texts.recording.kept).first().waitFor({ timeout: 10_000 });
  await page.evaluate(() => window.scrollTo(0, 0));
}

function scrollTo(locator) {
  return locator.evaluate((element) => window.scrollTo(0, element.getBoundingClientRect().top + window.scrollY - 24));
}

mkdirSync(pictures, { recursive: true });
const outDir = mkdtempSync(join(tmpdir(), 'pictures-'));
await build({ root, logLevel: 'warn', build: { outDir, emptyOutDir: true } });
const server = await serveFolder(outDir);
const browser = await chromium.launch({
  executablePath: findChromium(),
  args: ['--autoplay-policy=no-user-gesture-required'],
});
try {
  const context = await browser.newContext({
    viewport: SIZE,
    locale: 'en-GB',
    timezoneId: 'UTC',
    colorScheme: 'light',
    reducedMotion: 'reduce',
  });
  await hookMicrophone(context, readFileSync(join(root, 'sample-audio', 'survey-88-notes.wav')));
  const page = await context.newPage();
  await page.goto(server.url);
  for (const [name, show] of STEPS) {
    await show(page);
    const path = join(pictures, `${name}.png`);
    await page.screenshot({ path });
    console.log(`${name}.png  ${statSync(path).size} bytes`);
  }
} finally {
  await browser.close();
  await server.close();
  rmSync(outDir, { recursive: true, force: true });
}
