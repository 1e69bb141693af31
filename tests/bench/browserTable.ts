/** Table 10: the program in a browser, as a player meets it. */
import { join } from 'node:path';
import { chromiumHere } from '../browser/support/findChromium.ts';
import { launchChromium } from '../browser/support/launchChromium.ts';
import { type Played, playNotes } from '../browser/support/playedNotes.ts';
import { serveFolder } from '../browser/support/serveFolder.ts';
import { quantile } from '../support/statistics.ts';
import { type Bench, sized } from './bench.ts';
import { type BrowserSurvey, playToBrowser, type SurveyRun } from './browserSurvey.ts';
import { figure } from './report.ts';
import type { ThreadStep } from './threadSteps.ts';

/** A take's reading stands on the screen by then, counted from the take's end. */
const PROMPT_S = 0.5;
/** What a hand or an eye does not notice. */
const LONG_STEP_MS = 50;

const BUSY = 'page busy 150 of every 400 ms';

export async function browserTable(bench: Bench): Promise<void> {
  const { report } = bench;
  report.heading('10  In the browser: reading after the end of a take; longest block of the main thread; gaps');
  const executablePath = chromiumHere();
  if (executablePath === undefined) {
    report.remark('Left out: no Chromium was found. Install one, or set CHROME_PATH to its program file.');
    return;
  }
  const server = await serveFolder(await buildApp(bench.folder));
  const browser = await launchChromium(executablePath, { kind: 'none' });
  try {
    const surveys: [string, BrowserSurvey][] = [];
    for (const [name, run] of Object.entries(runsOf(bench))) {
      bench.progress(`in the browser: ${name}, in real time`);
      surveys.push([name, await playToBrowser(browser, server.url, run)]);
    }
    printSurveys(bench, surveys);
    printLimits(
      bench,
      surveys.map(([, survey]) => survey),
    );
  } finally {
    await browser.close();
    await server.close();
  }
}

async function buildApp(folder: string): Promise<string> {
  const { build } = await import('vite');
  const outDir = join(folder, 'app');
  await build({ root: process.cwd(), logLevel: 'error', build: { outDir, emptyOutDir: true } });
  return outDir;
}

/** Real time all of them: the last one ten minutes in a full run. */
function runsOf(bench: Bench): Readonly<Record<string, SurveyRun>> {
  const upwards = (count: number): Played[] => Array.from({ length: count }, (_, index) => ({ midi: 21 + index }));
  const count = sized(bench, 20, 85);
  const compass = playNotes(upwards(count), { seed: 11 });
  const times = Math.max(1, Math.round(sized(bench, 60, 600) / compass.durationS));
  return {
    'quiet room': { recording: compass, times: 1 },
    'noise 20 dB down': { recording: playNotes(upwards(count), { seed: 12, snrDb: 20 }), times: 1 },
    [BUSY]: { recording: compass, times, busy: { stepMs: 150, everyMs: 400 } },
  };
}

function printSurveys({ report }: Bench, surveys: readonly (readonly [string, BrowserSurvey])[]): void {
  report.table(
    [
      'survey',
      'length, s',
      'notes',
      'first reading, median s',
      '95 %',
      'longest',
      'result, median s',
      '95 %',
      'longest',
    ],
    surveys.map(([name, { playedS, noteCount, firstS, finalS }]) => [
      name,
      playedS.toFixed(0),
      String(noteCount),
      ...[firstS, finalS].flatMap((delays) => [0.5, 0.95, 1].map((share) => figure(quantile(delays, share)))),
    ]),
  );
  report.table(
    [
      'survey',
      'wrong kept as good',
      'asked again',
      'gaps told',
      'takes not as sent',
      'steps over 50 ms',
      'longest, ms',
      'longest by processor time, ms',
    ],
    surveys.map(([name, { judged, log, steps }]) => [
      name,
      String(judged.wrong.length + judged.invented.length),
      String(judged.again.length),
      String(log.holes.length),
      String(log.shiftedAtS.length),
      steps.length === 0 ? '–' : String(steps.filter(({ wallMs }) => wallMs > LONG_STEP_MS).length),
      figure(longest(steps, wallOf), 3),
      figure(longest(steps, processorOf), 3),
    ]),
  );
  report.remark(
    'Counted on the clock of the sound, from the end of a take to the frame that shows it; negative while it sounds. A first\n' +
      'reading is measured before the end of the take is known. Takes are compared sample by sample with the file that was played.\n' +
      'Steps of the page’s own thread are counted from the start of listening; where other programs use the processors too, they take\n' +
      'longer than their processor time.',
  );
  for (const [name, { complaints, judged, log }] of surveys) {
    report.worst(`${name}: gaps`, [...log.holes, ...log.shiftedAtS.map((atS) => `before ${atS.toFixed(1)} s`)]);
    report.worst(`${name}: what the browser complained of`, complaints);
    report.worst(
      `${name}: asked for again`,
      judged.again.map(({ note, takes }) => `${note.midi} at ${note.onsetS.toFixed(1)} s: ${JSON.stringify(takes)}`),
    );
  }
}

function printLimits({ report }: Bench, all: readonly BrowserSurvey[]): void {
  const undisturbed = all.slice(0, -1);
  const total = (of: readonly BrowserSurvey[], count: (survey: BrowserSurvey) => number) =>
    of.reduce((sum, survey) => sum + count(survey), 0);
  report.limit({
    what: 'in the browser: first reading after the end of a take, 95 %',
    measured: quantile(
      undisturbed.flatMap(({ firstS }) => firstS),
      0.95,
    ),
    unit: 's',
    atMost: PROMPT_S,
  });
  report.limit({
    what: 'in the browser: longest step of the page’s own thread, processor time',
    measured: longest(
      undisturbed.flatMap(({ steps }) => steps),
      processorOf,
    ),
    unit: 'ms',
    atMost: LONG_STEP_MS,
  });
  report.limit({
    what: 'in the browser: gaps in the sound, told or not',
    measured: total(all, ({ log }) => log.holes.length + log.shiftedAtS.length),
    unit: '',
    atMost: 0,
  });
  report.limit({
    what: 'in the browser: wrong notes kept as good',
    measured: total(all, ({ judged }) => judged.wrong.length + judged.invented.length),
    unit: '',
    atMost: 0,
  });
  report.limit({
    what: 'in the browser: good notes asked for again',
    measured: (100 * total(all, ({ judged }) => judged.again.length)) / total(all, ({ noteCount }) => noteCount),
    unit: '%',
    atMost: 2,
  });
}

const wallOf = ({ wallMs }: ThreadStep) => wallMs;
const processorOf = ({ processorMs }: ThreadStep) => processorMs ?? 0;

function longest(steps: readonly ThreadStep[], of: (step: ThreadStep) => number): number | undefined {
  return steps.length === 0 ? undefined : steps.reduce((most, step) => Math.max(most, of(step)), 0);
}
