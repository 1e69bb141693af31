/** Table 3a: false beats of single strings. */
import type { Beat } from '../../src/piano/reading.ts';
import { median, percentOf } from '../support/statistics.ts';
import { type Band, BEAT_SNR_DB, type BeatPlan, describeBeat, NOISY_BEAT_SNR_DB, planFalseBeat } from './beatPlans.ts';
import { type Bench, sized } from './bench.ts';
import { decayGroup, noiseGroup, type Standardised } from './coverageTable.ts';
import { registerOf } from './randomString.ts';
import { figure, percent } from './report.ts';
import type { TakeResult } from './takeJob.ts';

const RATE_BANDS_HZ: readonly Band[] = [
  [0.3, 0.5],
  [0.5, 1],
  [1, 2],
  [2, 5],
];
const DEPTH_BANDS_DB: readonly Band[] = [
  [3, 6],
  [6, 12],
  [12, 20],
];

type Heard = {
  readonly plan: BeatPlan;
  readonly verdict: 'found' | 'wrong rate' | 'undetermined' | 'missed';
  /** Of the partial that has the beat; undefined where none was given for it. */
  readonly beat: Beat | undefined;
};

/** @returns the found rates with their uncertainties, for the table of coverage */
export async function falseBeatTable({ pool, report, size }: Bench): Promise<Standardised[]> {
  const count = sized({ size }, 3, 16);
  const cells = RATE_BANDS_HZ.flatMap((rateBand) => DEPTH_BANDS_DB.map((depthBand) => ({ rateBand, depthBand })));
  const plans = cells.flatMap(({ rateBand, depthBand }, row) =>
    Array.from({ length: count }, (_, index) => planFalseBeat(rateBand, depthBand, 400_000 + 1000 * row + index)),
  );
  const results = await pool.run(
    'take',
    plans.map(({ spec }) => ({ spec, stringPosition: 1 as const })),
  );
  const heard = plans.map((plan, index) => hear(plan, results[index]!));
  report.heading('3a  False beats of one string (string 1), one partial, takes of 5 s, A1–C7');
  report.table(
    [
      'rate, Hz',
      'depth, dB',
      'takes',
      'found %',
      'wrong rate %',
      'undetermined %',
      'missed %',
      'rate error median %',
      'depth error median dB',
    ],
    cells.map((cell) => rowOf(cell, heard)),
  );
  report.remark(
    `Noise ${BEAT_SNR_DB} and ${NOISY_BEAT_SNR_DB} dB down by turns. Only where one beat or more fits into the time in which the\n` +
      'partial loses 30 dB. Found: called a false beat, with a rate within 15 % or 0.1 Hz of the truth on that partial.',
  );
  const clear = heard.filter(({ plan }) => plan.rateHz >= 0.5 && plan.depthDb >= 6);
  const isFound = ({ verdict }: Heard) => verdict === 'found';
  report.limit({
    what: 'false beats found, 0.5–5 Hz, 6 dB deep and more',
    measured: percentOf(clear, isFound),
    unit: '%',
    atLeast: 95,
  });
  report.limit({
    what: 'false beats found, all of 0.3–5 Hz, 3 dB deep and more',
    measured: percentOf(heard, isFound),
    unit: '%',
    atLeast: 90,
  });
  report.limit({
    what: 'rate of those found, median error',
    measured: median(rateErrorsPercent(heard.filter(isFound))),
    unit: '%',
    atMost: 2,
  });
  report.worst(
    'Not found',
    heard
      .filter((row) => !isFound(row))
      .map(
        ({ plan, verdict, beat }) => `${describeBeat(plan)}: ${verdict}${beat ? `, ${figure(beat.rateHz)} Hz` : ''}`,
      ),
  );
  return heard.flatMap(({ plan, beat }) =>
    beat
      ? [
          {
            quantity: 'beat rate',
            groups: [registerOf(plan.midi).name, decayGroup(plan.spec), noiseGroup(plan.spec.snrDb)],
            ratio: (beat.rateHz - plan.rateHz) / beat.rateStandardUncertaintyHz,
          },
        ]
      : [],
  );
}

function hear(plan: BeatPlan, { outcome }: TakeResult): Heard {
  if (!outcome.found || outcome.reading.midi !== plan.midi) return { plan, verdict: 'missed', beat: undefined };
  const { beating, partials } = outcome.reading;
  const beats = partials.find(({ partialNumber }) => partialNumber === plan.partialNumber)?.beats ?? [];
  const beat = [...beats].sort((a, b) => distance(a, plan) - distance(b, plan))[0];
  if (beating.kind === 'none') return { plan, verdict: 'missed', beat };
  if (beating.kind !== 'false beat') return { plan, verdict: 'undetermined', beat };
  const isRight = beat !== undefined && distance(beat, plan) <= Math.max(0.15 * plan.rateHz, 0.1);
  return { plan, verdict: isRight ? 'found' : 'wrong rate', beat };
}

function distance({ rateHz }: Beat, plan: BeatPlan): number {
  return Math.abs(rateHz - plan.rateHz);
}

function rowOf({ rateBand, depthBand }: { rateBand: Band; depthBand: Band }, heard: readonly Heard[]): string[] {
  const own = heard.filter(({ plan }) => plan.rateBand === rateBand && plan.depthBand === depthBand);
  const share = (wanted: Heard['verdict']) => percent(percentOf(own, ({ verdict }) => verdict === wanted));
  const found = own.filter(({ verdict }) => verdict === 'found');
  const depthErrors = found.flatMap(({ plan, beat }) => (beat ? [Math.abs(beat.depthDb - plan.depthDb)] : []));
  return [
    rateBand.join('–'),
    depthBand[0] === 12 ? '> 12' : depthBand.join('–'),
    String(own.length),
    share('found'),
    share('wrong rate'),
    share('undetermined'),
    share('missed'),
    figure(median(rateErrorsPercent(found))),
    figure(median(depthErrors)),
  ];
}

function rateErrorsPercent(heard: readonly Heard[]): number[] {
  return heard.flatMap(({ plan, beat }) => (beat ? [(100 * distance(beat, plan)) / plan.rateHz] : []));
}
