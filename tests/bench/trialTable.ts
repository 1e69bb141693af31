/** Table 14: whole sets of trials at the bridge, from sound. */
import { midiToName } from '../../src/piano/note.ts';
import { percentOf } from '../support/statistics.ts';
import { type Bench, sized } from './bench.ts';
import { percent } from './report.ts';
import type { TrialJobResult } from './trialJob.ts';
import { planTrials, TRIED, type TrialPlan, type TrialTruth } from './trialPlans.ts';

type Judged = { readonly plan: TrialPlan; readonly result: TrialJobResult };

const TRUTHS: readonly TrialTruth[] = ['one helps', 'none helps', 'nothing beats'];
const FULL_COUNT: Readonly<Record<TrialTruth, number>> = { 'one helps': 120, 'none helps': 40, 'nothing beats': 40 };
/** The limits of the judgement were set with other strings in view: those of seeds from 300,000 on. */
const FIRST_SEED = 700_000;

export async function trialTable({ pool, report, size }: Bench): Promise<void> {
  const plans = TRUTHS.flatMap((truth, row) =>
    Array.from({ length: sized({ size }, 4, FULL_COUNT[truth]) }, (_, index) =>
      planTrials(truth, FIRST_SEED + 1000 * row + index),
    ),
  );
  const results = await pool.run('trial', plans);
  const judged = plans.map((plan, index) => ({ plan, result: results[index]! }));
  const [helped = [], unhelped = [], silent = []] = TRUTHS.map((truth) =>
    judged.filter(({ plan }) => plan.truth === truth),
  );
  report.heading('14  Trials at the bridge: four on each string, one of them takes its doublet away, or none');
  report.table(
    [
      'what is true',
      'strings',
      'right conclusion %',
      'right trial named %',
      'trials without effect',
      'no difference said %',
    ],
    [helped, unhelped, silent].map(rowOf),
  );
  report.remark(
    'C3–C7, one take as found and one after each trial, 5 s each; a doublet 0.3 to 3 Hz apart, 5 to 15 dB deep, on one partial or in\n' +
      'proportion on four, of which one beat or more fits into the time in which the partial loses 30 dB; noise 25 to 45 dB down.\n' +
      'Takes differ by up to 10 dB in level, by 5 % in decay and by 10 % in how strongly the beat is excited.',
  );
  report.limit({
    what: 'right trial of four named, and no other said to help',
    measured: percentOf(helped, isNamed),
    unit: '%',
    atLeast: 95,
  });
  report.limit({
    what: 'trials without effect said to make no difference',
    measured: percentOf(judged.flatMap(idleOutcomes), (outcome) => outcome === 'no difference'),
    unit: '%',
    atLeast: 95,
  });
  report.limit({
    what: 'strings on which no trial helps, or nothing beats, said to be so',
    measured: percentOf([...unhelped, ...silent], isRight),
    unit: '%',
    atLeast: 95,
  });
  report.worst('Wrong conclusions', judged.filter((one) => !isRight(one)).map(trialText));
}

function rowOf(rows: readonly Judged[]): string[] {
  const [first] = rows;
  const idle = rows.flatMap(idleOutcomes);
  return [
    first?.plan.truth ?? '',
    String(rows.length),
    percent(percentOf(rows, isRight)),
    first?.plan.helping ? percent(percentOf(rows, isNamed)) : '–',
    String(idle.length),
    percent(percentOf(idle, (outcome) => outcome === 'no difference')),
  ];
}

function isNamed({ plan, result }: Judged): boolean {
  return result.named === plan.helping && result.kind === 'one trial helps';
}

function isRight(judged: Judged): boolean {
  return judged.plan.helping === null ? judged.result.kind === 'no trial helps' : isNamed(judged);
}

/** Of the trials that change nothing. */
function idleOutcomes({ plan, result }: Judged) {
  return result.outcomes.filter((_, index) => TRIED[index] !== plan.helping);
}

function trialText({ plan, result }: Judged): string {
  const beats = plan.beats.map(
    ({ partialNumber, splitHz, ratio }) =>
      `partial ${partialNumber} ${splitHz.toFixed(2)} Hz ratio ${ratio.toFixed(2)}`,
  );
  const told = result.told.map((text, index) => `${TRIED[index] === plan.helping ? '* ' : ''}${text}`);
  return `${midiToName(plan.midi)}, ${beats.join(', ')}, noise ${plan.snrDb.toFixed(0)} dB down, seed ${plan.seed}: ${result.kind}; ${told.join(' | ')}`;
}
