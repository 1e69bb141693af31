import type { Browser } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { texts } from '../../src/ui/texts.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { openApp } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginSurvey } from './support/recordSurvey.ts';

const RATE_HZ = 44100;
const words = texts.clock;

/** A tone as a clock that runs 60 ppm fast would count 440 Hz, in a little noise. */
function toneSeenBy60PpmFast(durationS: number): Buffer {
  const { normal } = seededRandom(440);
  const hz = 440 / (1 + 60e-6);
  const samples = Float32Array.from(
    { length: durationS * RATE_HZ },
    (_, i) => 0.2 * Math.cos((2 * Math.PI * hz * i) / RATE_HZ) + 0.0005 * normal(),
  );
  return Buffer.from(writeWave(samples, RATE_HZ, 'float'));
}

let browser: Browser;
beforeEach(async () => {
  browser = await openBrowser({ kind: 'none' });
});
afterEach(() => browser.close());

async function openScreen(durationS: number) {
  const context = await browser.newContext();
  await hookMicrophone(context, toneSeenBy60PpmFast(durationS));
  const watched = await openApp(context);
  await watched.page.goto(`${inject('appUrl')}#/microphone-clock`);
  return watched;
}

describe('a reference tone', () => {
  it('tells how fast the clock is; the next survey says so, and that its figures are as measured', async () => {
    const { page, complaints } = await openScreen(25);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByRole('button', { name: words.listen.action }).click();
    await page.getByText('This microphone’s clock runs 60 ± 2 ppm fast.').waitFor({ timeout: 60_000 });
    await page.getByText('Pitches read 0.10 cents flat').waitFor();
    const table = page.getByRole('table', { name: words.earlier.caption });
    await table.getByText('60 ± 2 ppm fast').waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);

    await page.getByRole('link', { name: texts.common.productName }).click();
    await beginSurvey(page);
    await page.getByRole('button', { name: texts.recording.buttons.finish }).click();
    const section = page.getByRole('region', { name: words.survey.title });
    await section.getByText('was checked against a reference tone and ran 60 ± 2 ppm fast.').waitFor();
    await section
      .getByText('So pitches read 0.10 cents flat; the figures above are as measured, not corrected.')
      .waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('that nothing is known of is asked for again', async () => {
    const { page } = await openScreen(2);
    await page.getByLabel(words.reference.frequency).fill('20');
    await page.getByRole('button', { name: words.listen.action }).click();
    await page.getByText(words.reference.faults['frequency-out-of-range']).waitFor();
    await page.getByLabel(words.reference.kinds.fork).check();
    await page.getByLabel(words.reference.frequency).fill('466');
    await page.getByRole('button', { name: words.listen.action }).click();
    await page.getByText(words.reference.faults['temperature-out-of-range']).waitFor();
    await page.getByLabel(words.reference.temperature, { exact: true }).fill('22');
    await page.getByRole('button', { name: words.listen.action }).click();
    await page.getByText(words.listen.waiting).waitFor();
    await page.getByRole('button', { name: words.listen.stop }).click();
    await page.getByRole('button', { name: words.listen.action }).waitFor();
  });
});
