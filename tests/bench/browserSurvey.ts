/** One survey played to the shipped program in a browser, in real time: how long it let the player wait, and what it lost. */
import type { Browser } from 'playwright-core';
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

/** After this nothing more is told of what was played. */
const SETTLES_S = 5;

export async function playToBrowser(browser: Browser, appUrl: string, run: SurveyRun): Promise<BrowserSurvey> {
  const { recording, times, busy } = run;
  const context = await browser.newContext();
  await watchMicrophone(context, [recording.wave], { isRepeated: times > 1 });
  const { page, complaints } = await openWatched(context, appUrl);
  await beginSurvey(page, { isOnDemonstration: true });
  if (busy) await redrawCharts(page, busy.stepMs, busy.everyMs);
  if (!busy) await browser.startTracing(page, { categories: STEP_CATEGORIES });
  const notes = repeated(recording, times);
  const playedS = recording.durationS * times;
  await page.waitForFunction((untilS) => microphone.soundS() >= untilS, playedS + SETTLES_S, {
    timeout: (playedS + 60) * 1000,
    polling: 1000,
  });
  const log = await microphoneLog(page);
  const steps = busy ? [] : threadSteps(await browser.stopTracing());
  await context.close();
  const takes = log.takes.filter(({ onsetS }) => onsetS < playedS); // the repeated recording plays on
  const judged = judgeSurvey(notes, takes);
  const delays = readingDelays({ ...log, takes }, judged.beganS).filter(({ take }) => take.midi !== null);
  const firstS = delays.map((delay) => delay.firstS ?? Infinity);
  const finalS = delays.map((delay) => delay.finalS ?? Infinity);
  return { noteCount: notes.length, playedS, firstS, finalS, judged, log, steps, complaints };
}

function repeated({ notes, durationS }: PlayedNotes, times: number): PlayedNote[] {
  return Array.from({ length: times }, (_, time) => time * durationS).flatMap((laterS) =>
    notes.map((note) => ({ ...note, onsetS: note.onsetS + laterS })),
  );
}
