/** Table 8a and 8b: a survey through the command line, time and memory of the whole process. */
import { join } from 'node:path';
import { hzToCents } from '../../src/piano/cents.ts';
import { COMPASS_88, notesOf } from '../../src/piano/compass.ts';
import { midiToName } from '../../src/piano/note.ts';
import { median, quantile } from '../support/statistics.ts';
import type { SyntheticSurvey } from '../support/syntheticSurvey.ts';
import { type Bench, sized } from './bench.ts';
import { buildCommandLine, type CommandRun, runCommandLine } from './commandLineRun.ts';
import { figure, type Report } from './report.ts';
import { SECONDS_PER_NOTE, SURVEY_RATE_HZ, surveySound, writeRepeated } from './surveySound.ts';

export async function commandLineTables(bench: Bench): Promise<void> {
  buildCommandLine();
  const step = sized(bench, 4, 1);
  const survey = await surveyRun(
    bench,
    notesOf(COMPASS_88).filter((_, index) => index % step === 0),
  );
  await memoryTable(bench, survey);
}

type SurveyRun = { readonly sound: SyntheticSurvey; readonly soundS: number; readonly run: CommandRun };

async function surveyRun({ report, progress, folder }: Bench, notes: readonly number[]): Promise<SurveyRun> {
  progress(`survey of ${notes.length} notes through the command line`);
  const sound = surveySound(notes);
  const soundS = sound.samples.length / SURVEY_RATE_HZ;
  const file = join(folder, 'survey.wav');
  writeRepeated(file, sound.samples, 1);
  const run = await runCommandLine(['survey', file, '--string', '1', '--json']);
  const title = `a survey of ${notes.length} notes of ${SECONDS_PER_NOTE} s at 48 kHz, as a whole process`;
  report.heading(`8a  Command line: ${title}`);
  report.table(RUN_TITLES, [runText(soundS, run)]);
  report.limit({
    what: `survey of ${notes.length} notes, length of the sound over processor time`,
    measured: soundS / run.processorS,
    unit: '×',
    atLeast: 5,
  });
  surveyTruth(sound, run, report);
  return { sound, soundS, run };
}

const RUN_TITLES = [
  'sound, s',
  'time, s',
  'faster than real time, ×',
  'processor time, s',
  'by processor time, ×',
  'peak memory, MB',
];

function runText(soundS: number, { wallS, processorS, peakMemoryMb }: CommandRun): string[] {
  return [
    soundS.toFixed(0),
    wallS.toFixed(1),
    figure(soundS / wallS),
    processorS.toFixed(1),
    figure(soundS / processorS),
    peakMemoryMb.toFixed(0),
  ];
}

type ReadingJson = { readonly note: string; readonly onsetS: number; readonly partial1Hz: number };

function surveyTruth({ truth }: SyntheticSurvey, { stdout }: CommandRun, report: Report): void {
  const { readings } = JSON.parse(stdout) as { readonly readings: readonly ReadingJson[] };
  const rows = truth.map(({ midi, onsetS, strings }) => {
    const heard = readings.find((reading) => Math.abs(reading.onsetS - onsetS) < 0.05);
    const isRight = heard?.note === midiToName(midi);
    const errorCents = isRight ? Math.abs(hzToCents(heard.partial1Hz, strings[0]!.partialHz[0]!)) : Number.NaN;
    return { midi, isRight, heard: heard?.note ?? 'nothing', errorCents };
  });
  const errors = rows.filter(({ isRight }) => isRight).map(({ errorCents }) => errorCents);
  const [middle, high] = [figure(median(errors)), figure(quantile(errors, 0.95))];
  report.remark(
    `${errors.length} of ${truth.length} named rightly in ${readings.length} takes; partial 1 off by ${middle} cents in the median, 95 % below ${high}.`,
  );
  const wrong = rows.filter(({ isRight }) => !isRight);
  report.worst(
    'Not named rightly',
    wrong.map(({ midi, heard }) => `${midiToName(midi)}: ${heard}`),
  );
}

/** About half an hour in a full run. */
async function memoryTable({ size, folder, report, progress }: Bench, once: SurveyRun): Promise<void> {
  const count = sized({ size }, 3, Math.round(1800 / once.soundS));
  progress(`the survey ${count} times over`);
  const file = join(folder, 'long.wav');
  writeRepeated(file, once.sound.samples, count);
  const long = await runCommandLine(['survey', file, '--string', '1', '--json']);
  report.heading('8b  Memory: the same survey over and over in one file');
  report.table(RUN_TITLES, [runText(once.soundS, once.run), runText(count * once.soundS, long)]);
  const minutes = (times: number) => ((times * once.soundS) / 60).toFixed(0);
  report.limit({
    what: `peak memory for ${minutes(count)} minutes over that for ${minutes(1)}`,
    measured: long.peakMemoryMb / once.run.peakMemoryMb,
    unit: '×',
    atMost: 1.5,
  });
}
