/** One survey played to the shipped program in a browser, in real time: how long it let the player wait, and what it lost. */
import type { Browser, Page } from 'playwright-core';
import { type JudgedSurvey, judgeSurvey } from '../browser/support/judgedSurvey.ts';
import { openWatched } from '../browser/support/openWatched.ts';
import type { PlayedNote, PlayedNotes } from '../browser/support/playedNotes.ts';
import { readingDelays } from '../browser/support/readingDelays.ts';
import { beginSurvey } from '../browser/support/recordSurvey.ts';
import {
  type MicrophoneLog,
  microphoneLog,
  redrawCharts,
  watchMicrophone,
} from '../browser/support/watchedMicrophone.ts';

import { STEP_CATEGORIES, type ThreadStep, threadSteps } from './threadSteps.ts';

export type BrowserSurvey = {
  readonly noteCount: number;
  readonly playedS: number;
  /** From a take's end to what the screen showed of it first, and to its result. */
  readonly firstS: readonly number[];
  readonly finalS: readonly number[];
  readonly judged: JudgedSurvey;
  readonly log: MicrophoneLog;
  /** Of the page's own thread; none where it is kept busy. */
  readonly steps: readonly ThreadStep[];
  readonly complaints: readonly string[];
};

export type SurveyRun = {
  readonly recording: PlayedNotes;
  /** How often the recording is played, without a pause. */
  readonly times: number;
  /** The page's own thread is kept busy all along, as by charts that are drawn anew: so long, so often. */
  readonly busy?: { readonly stepMs: number; readonly everyMs: number };
};

/** How far behind the sound a busy machine may be before what it still owes counts as lost. */
const PATIENCE_S = 240;

export async function playToBrowser(browser: Browser, appUrl: string, run: SurveyRun): Promise<BrowserSurvey> {
  const { recording, times, busy } = run;
  const context = await browser.newContext();
  await watchMicrophone(context, [recording.wave], times);
  const { page, complaints } = await openWatched(context, appUrl);
  await beginSurvey(page, { isOnDemonstration: true });
  if (busy) await redrawCharts(page, busy.stepMs, busy.everyMs);
  if (!busy) await browser.startTracing(page, { categories: STEP_CATEGORIES });
  const notes = repeated(recording, times);
  const playedS = recording.durationS * times;
  await untilTold(page, notes, playedS);
  const log = await microphoneLog(page);
  const steps = busy ? [] : threadSteps(await browser.stopTracing());
  await context.close();
  const judged = judgeSurvey(notes, log.takes);
  const delays = readingDelays(log, judged.beganS).filter(({ take }) => take.midi !== null);
  const firstS = delays.map((delay) => delay.firstS ?? Infinity);
  const finalS = delays.map((delay) => delay.finalS ?? Infinity);
  return { noteCount: notes.length, playedS, firstS, finalS, judged, log, steps, complaints };
}

/** Until as many takes were told as notes were played and the last is shown, or patience is at its end. */
async function untilTold(page: Page, notes: readonly PlayedNote[], playedS: number): Promise<void> {
  await page.waitForFunction(
    ({ count, endS, patienceS }) => {
      const { takes } = microphone.log;
      const isOver = microphone.soundS() > endS + patienceS;
      return isOver || (microphone.soundS() > endS && takes.length >= count && takes.at(-1)?.shownAtS !== null);
    },
    { count: notes.length, endS: playedS, patienceS: PATIENCE_S },
    { timeout: (playedS + 2 * PATIENCE_S) * 1000, polling: 1000 },
  );
}

function repeated({ notes, durationS }: PlayedNotes, times: number): PlayedNote[] {
  return Array.from({ length: times }, (_, time) => time * durationS).flatMap((laterS) =>
    notes.map((note) => ({ ...note, onsetS: note.onsetS + laterS })),
  );
}
