import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { TakeMessage } from '../../src/workers/listeningMessages.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { openBrowser } from './support/openBrowser.ts';
import { openHarness } from './support/openHarness.ts';

const SAMPLE_RATE_HZ = 44100;
const NOTES = [57, 60, 64, 67];
const { samples, truth } = synthesizeSurvey({
  notes: NOTES.map((midi, index) => ({ strings: [{ midi, offsetCents: index - 2 }], holdS: 1.8 })),
  sampleRateHz: SAMPLE_RATE_HZ,
  gapS: 0.3,
  leadS: 1,
  tailS: 1,
  noiseDbfs: -75,
  seed: 9,
});

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser({ kind: 'none' });
});
afterAll(() => browser.close());
beforeEach(async () => {
  page = await openHarness(browser);
  await page.route('**/sound.f32', (route) => route.fulfill({ body: Buffer.from(samples.buffer) }));
});
afterEach(() => page.context().close());

/** What goes wrong on the way, at a place in the sound. */
type Mishap = { readonly kind: 'none' | 'frames-missing' | 'zeros' | 'dropped'; readonly at: number };

type Outcome = { takes: Omit<TakeMessage, 'samples'>[]; sampleCounts: number[]; holes: string[]; failures: string[] };

/** Posts the sound to the real workers as the audio thread does, as fast as it goes. */
function hear(mishap: Mishap): Promise<Outcome> {
  return page.evaluate(
    async ({ rate, mishap }) => {
      const sound = new Float32Array(await (await fetch('sound.f32')).arrayBuffer());
      const { desk, told } = harness.openAndNote({ pitchStandardHz: 440, stringPosition: 0 });
      const { port1, port2 } = new MessageChannel();
      desk.open(port2, rate);
      const putIn = new Float32Array(mishap.kind === 'zeros' ? 441 : 0);
      const goOnAt = mishap.at + (mishap.kind === 'dropped' ? 700 : 0);
      const heard = new Float32Array(
        await new Blob([sound.slice(0, mishap.at), putIn, sound.slice(goOnAt)]).arrayBuffer(),
      );
      for (let at = 0; at < heard.length; at += 2048) {
        const firstFrame = mishap.kind === 'frames-missing' && at > mishap.at ? at + 4096 : at;
        port1.postMessage({ kind: 'block', firstFrame, samples: heard.slice(at, at + 2048) });
      }
      port1.postMessage({ kind: 'flushed' });
      await desk.finish();
      desk.close();
      const takes = told.reports.filter((report) => report.kind === 'take');
      return {
        takes: takes.map(({ samples: _, ...take }) => take),
        sampleCounts: takes.map((take) => take.samples.length),
        holes: told.reports.filter((report) => report.kind === 'hole').map((hole) => hole.cause),
        failures: told.failures,
      };
    },
    { rate: SAMPLE_RATE_HZ, mishap },
  );
}

const usable = ({ takes }: Outcome) => takes.map(({ outcome }) => outcome.found && outcome.reading.quality.isUsable);
const insideSecond = truth[1]!.onsetIndex + 15_000;

describe('the two workers', () => {
  it('measure every note of an unbroken stream, hand over its sound, and come to an end when told', async () => {
    const heard = await hear({ kind: 'none', at: 0 });
    expect(heard.failures).toEqual([]);
    expect(heard.holes).toEqual([]);
    expect(usable(heard)).toEqual(NOTES.map(() => true));
    for (const [index, { outcome, durationS }] of heard.takes.entries()) {
      if (!outcome.found) throw new Error(outcome.detail);
      expect(outcome.reading.midi).toBe(NOTES[index]);
      expect(Math.abs(outcome.reading.offsetCents - (index - 2))).toBeLessThan(0.1);
      expect(heard.sampleCounts[index]).toBe(Math.round(durationS * SAMPLE_RATE_HZ));
    }
  });

  it.each([
    ['frames are missing', 'frames-missing', ['frames-missing']],
    ['the device put zeros in', 'zeros', ['zeros-inside-sound']],
    ['sound was dropped and nothing marks it', 'dropped', []],
  ] as const)('never pass a take as good in which %s', async (_, kind, holes) => {
    const heard = await hear({ kind, at: insideSecond });
    expect(heard.failures).toEqual([]);
    expect(heard.holes).toEqual(holes);
    expect(usable(heard)).toEqual([true, false, true, true]);
    const broken = heard.takes[1]?.outcome;
    expect(broken?.found && broken.reading.quality.faults).toContain('hole-in-recording');
  });

  it('refuse a message that does not fit, say so, and still come to an end', async () => {
    const failures = await page.evaluate(async () => {
      const { desk, told } = harness.openAndNote({ pitchStandardHz: 440, stringPosition: 0 });
      const { port1, port2 } = new MessageChannel();
      desk.open(port2, 44100);
      port1.postMessage({ kind: 'block', firstFrame: 0, samples: 'noise' });
      port1.postMessage({ kind: 'flushed' });
      await desk.finish();
      return told.failures;
    });
    expect(failures).toHaveLength(1);
    expect(failures[0]).toMatch(/samples/);
  });
});
