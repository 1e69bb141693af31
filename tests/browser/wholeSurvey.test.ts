import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { texts } from '../../src/ui/texts.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { openApp, type WatchedPage } from './support/openApp.ts';
import { type Microphone, openBrowser } from './support/openBrowser.ts';
import { PLAYED_MIDI, type PlayedSurvey, playSurvey } from './support/playedSurvey.ts';
import { beginSurvey, finishAndReload, untilStored } from './support/recordSurvey.ts';
import { type StoredTake, storedTakes } from './support/storedTakes.ts';

/** The cents that the screens keep and those of the command line may differ by this much. */
const TOLERANCE_CENTS = 0.1;
/** How far behind the sound a busy machine may be. */
const PATIENCE_S = 120;

let played: PlayedSurvey;
let remove: (() => void) | undefined;
/** Each in a browser of its own, side by side, since both take as long as they sound. */
let unbroken: Promise<Surveyed>;
let broken: Promise<Surveyed>;
beforeAll(() => {
  played = playSurvey();
  remove = played.remove;
  unbroken = survey({ kind: 'none' }, 1, (context) => hookMicrophone(context, played.bytes));
  // The fake device drops and inserts 10 ms now and then; it plays the file over and over, so such a note is played again.
  broken = survey({ kind: 'file', path: played.path }, 5);
  for (const surveyed of [unbroken, broken]) surveyed.catch(() => undefined); // the test that waits for it tells
});
afterAll(() => remove?.());

type Surveyed = { takes: StoredTake[]; shownRowCount: number; complaints: readonly string[] };

async function survey(microphone: Microphone, loops: number, hook?: (context: BrowserContext) => Promise<void>) {
  const browser: Browser = await openBrowser(microphone);
  try {
    const context = await browser.newContext();
    await hook?.(context);
    const { page, complaints }: WatchedPage = await openApp(context);
    await beginSurvey(page);
    await untilStored(page, PLAYED_MIDI, (loops * played.durationS + PATIENCE_S) * 1000);
    await finishAndReload(page);
    const rows = page.getByRole('table', { name: texts.visit.survey.caption }).getByRole('row');
    const shownRowCount = (await rows.count()) - 1; // without the head
    return { takes: await storedTakes(page), shownRowCount, complaints } satisfies Surveyed;
  } finally {
    await browser.close();
  }
}

/** Every take that passed as good, kept or set aside, against the command line's reading of the same note. */
function differencesCents({ takes }: Surveyed): { midi: number; differenceCents: number }[] {
  return takes
    .filter((take) => take.isUsable)
    .map(({ midi, offsetCents }) => ({
      midi,
      differenceCents: Math.abs(offsetCents - (played.commandLineCents.get(midi) ?? Number.POSITIVE_INFINITY)),
    }));
}

const keptMidi = ({ takes }: Surveyed) =>
  takes
    .filter((take) => take.isKept && take.isUsable)
    .map((take) => take.midi)
    .sort((a, b) => a - b);

describe('a survey of 22 notes from A0 to A6, hands-free, from the microphone to the database and back', () => {
  it('finds every note in the file by the command line', () => {
    expect([...played.commandLineCents.keys()].sort((a, b) => a - b)).toEqual([...PLAYED_MIDI]);
  });

  it('agrees with the command line on every note, where the sound comes in unbroken', async () => {
    const surveyed = await unbroken;
    expect(surveyed.complaints).toEqual([]);
    expect(keptMidi(surveyed)).toEqual([...PLAYED_MIDI]);
    expect(surveyed.shownRowCount).toBe(PLAYED_MIDI.length);
    expect(surveyed.takes.filter((take) => !take.isUsable)).toEqual([]);
    for (const { midi, differenceCents } of differencesCents(surveyed))
      expect(differenceCents, `note ${midi}`).toBeLessThan(TOLERANCE_CENTS);
  });

  it('agrees with the command line on every take that it calls good, where the device breaks the sound', async () => {
    const surveyed = await broken;
    expect(surveyed.complaints).toEqual([]);
    expect(keptMidi(surveyed)).toEqual([...PLAYED_MIDI]);
    expect(surveyed.shownRowCount).toBe(PLAYED_MIDI.length);
    for (const { midi, differenceCents } of differencesCents(surveyed))
      expect(differenceCents, `note ${midi}`).toBeLessThan(TOLERANCE_CENTS);
  });
});
