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
const { routeToHref } = await load('src', 'ui', 'routes.ts');

/** Each ends on the screen that its picture shows; the next one starts there. */
const STEPS = [
  ['workshop', showWorkshop],
  ['instrument', showInstrument],
  ['stability', showStability],
  ['owners-page', showOwnersPage],
  ['strings', showStrings],
  ['stringing', showStringing],
  ['how-it-measures', showMethod],
  ['survey', showSurvey],
  ['take', showTake],
  ['recording', showRecording],
];
const INSTRUMENT = 'The school hall upright';
let instrumentAddress = '';

async function showWorkshop(page) {
  await page.getByRole('button', { name: texts.workshop.empty.tryAction }).click();
  await page.getByRole('button', { name: texts.workshop.demonstration.remove }).waitFor({ timeout: 120_000 });
}

async function showInstrument(page) {
  await page.getByRole('link', { name: INSTRUMENT }).click();
  await drawWhole(page);
  const giving = page.getByText(texts.stability.verdict.states['giving way']).first();
  await giving.waitFor({ timeout: 120_000 });
  instrumentAddress = page.url();
  await toTop(page);
}

async function openPage(page, below) {
  await page.goto(`${instrumentAddress}/${below}`);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
}

async function showStability(page) {
  await openPage(page, 'stability');
  await page.getByText(texts.stability.verdict.states['giving way']).first().waitFor({ timeout: 120_000 });
  await drawWhole(page);
  await toTop(page);
}

async function showOwnersPage(page) {
  await openPage(page, 'owners-page');
  const course = page.getByRole('img', { name: /^Chart of/ });
  await course.waitFor({ timeout: 120_000 });
  await scrollTo(page.getByRole('heading', { level: 1, name: INSTRUMENT }));
}

async function showStrings(page) {
  await openPage(page, 'strings');
  await page.getByRole('heading', { name: texts.strings.desk.title }).waitFor();
  await toTop(page);
}

async function showStringing(page) {
  await openPage(page, 'stringing');
  await scrollTo(page.getByRole('grid'));
}

async function showMethod(page) {
  await page.goto(instrumentAddress.replace(/#.*/, routeToHref({ screen: 'method' })));
  await page.getByRole('img').nth(1).waitFor({ timeout: 120_000 });
  await toTop(page);
}

/** The page draws what comes near what is seen of it, and all of it for printing. */
async function drawWhole(page) {
  await page.locator('figure').first().waitFor({ timeout: 120_000 });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.locator('svg.recharts-surface').first().waitFor();
}

function toTop(page) {
  return page.evaluate(() => window.scrollTo(0, 0));
}

async function showSurvey(page) {
  await page.goto(instrumentAddress);
  await page.getByRole('table', { name: texts.instrument.visits.caption }).getByRole('link').first().click();
  await page.getByRole('table', { name: texts.visit.surveys.caption }).getByRole('link').first().click();
  await page.getByRole('table', { name: texts.visit.survey.caption }).waitFor();
  await toTop(page);
}

/** The first string of this survey that beats by itself. */
async function showTake(page) {
  const row = page.getByRole('row').filter({ hasText: texts.take.beatKinds['false beat'] }).first();
  await row.getByRole('link').first().click();
  await page.getByRole('table', { name: texts.take.partialsCaption }).waitFor();
  await toTop(page);
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
  await toTop(page);
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
