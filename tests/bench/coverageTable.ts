/** Table 4: how often the truth lies within the uncertainty that was stated. */

import { percentOf } from '../support/statistics.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { type AccuracyTake, describeTake } from './accuracyTakes.ts';
import { REGISTERS } from './randomString.ts';
import { percent, type Report } from './report.ts';

/** Error over stated standard uncertainty. */
export type Standardised = {
  readonly quantity: string;
  /** Register, noise and kind of decay: the groups it is counted in. */
  readonly groups: readonly string[];
  readonly ratio: number;
};

const ONE_SIGMA = { atLeast: 60, atMost: 76 };
const TWO_SIGMA = { atLeast: 90, atMost: 98 };
const QUANTITIES = ['partials', 'partial 1', 'F0', 'B', 'beat rate'] as const;

export function coverageTable(
  takes: readonly AccuracyTake[],
  beatRates: readonly Standardised[],
  report: Report,
): void {
  const usable = takes.filter((take) => take.isNamedRightly && take.reading?.quality.isUsable);
  const ratios = [...usable.flatMap(ratiosOf), ...beatRates];
  report.heading('4  Truth within the stated uncertainty, usable takes of table 1 and beats of table 3a');
  report.table(
    ['quantity', 'of', 'count', 'within 1 σ %', 'within 2 σ %', 'beyond 5 σ %'],
    QUANTITIES.flatMap((quantity) => GROUPS.map((group) => rowOf(ratios, quantity, group))).filter(hasCount),
  );
  for (const quantity of QUANTITIES) {
    const own = ratios.filter((row) => row.quantity === quantity);
    const measured = (sigmas: number) => percentOf(own, ({ ratio }) => Math.abs(ratio) <= sigmas);
    report.limit({ what: `${quantity}: truth within 1 σ`, measured: measured(1), unit: '%', ...ONE_SIGMA });
    report.limit({ what: `${quantity}: truth within 2 σ`, measured: measured(2), unit: '%', ...TWO_SIGMA });
  }
  worstCoverage(usable, report);
}

function rowOf(all: readonly Standardised[], quantity: string, group: string): string[] {
  const rows = all.filter((row) => row.quantity === quantity && (group === 'all' || row.groups.includes(group)));
  const within = (sigmas: number) => percent(percentOf(rows, ({ ratio }) => Math.abs(ratio) <= sigmas));
  const beyond = percent(percentOf(rows, ({ ratio }) => !(Math.abs(ratio) <= 5)));
  return [quantity, group, String(rows.length), within(1), within(2), beyond];
}

/** Of the table's rows, those that count anything. */
function hasCount([, , count]: readonly string[]): boolean {
  return count !== '0';
}

export function decayGroup(spec: NoteSpec): string {
  return spec.strings[0]?.aftersound ? 'two-stage decay' : 'single decay';
}

export function noiseGroup(snrDb: number | undefined): string {
  return (snrDb ?? 0) >= 30 ? 'noise 30 dB down and more' : 'noise less than 30 dB down';
}

const GROUPS = [
  ...REGISTERS.map(({ name }) => name),
  'single decay',
  'two-stage decay',
  'noise less than 30 dB down',
  'noise 30 dB down and more',
  'all',
];

function ratiosOf({ reading, string, register, spec }: AccuracyTake): Standardised[] {
  if (!reading) return [];
  const groups = [register.name, decayGroup(spec), noiseGroup(spec.snrDb)];
  const ratio = (quantity: string, value: number | null, sigma: number | null, truth: number | undefined) =>
    value === null || sigma === null || truth === undefined
      ? []
      : [{ quantity, groups, ratio: (value - truth) / sigma }];
  return [
    ...reading.partials.flatMap(({ partialNumber, frequencyHz, frequencyStandardUncertaintyHz }) =>
      ratio('partials', frequencyHz, frequencyStandardUncertaintyHz, string.partialHz[partialNumber - 1]),
    ),
    ...ratio('partial 1', reading.partial1Hz, reading.partial1StandardUncertaintyHz, string.partialHz[0]),
    ...ratio('F0', reading.f0Hz, reading.f0StandardUncertaintyHz, string.f0Hz),
    ...ratio('B', reading.inharmonicityB, reading.inharmonicityBStandardUncertainty, string.inharmonicityB),
  ];
}

function worstCoverage(takes: readonly AccuracyTake[], report: Report): void {
  const far = takes.flatMap((take) =>
    ratiosOf(take)
      .filter(({ ratio }) => Math.abs(ratio) > 5)
      .map(({ quantity, ratio }) => ({
        size: Math.abs(ratio),
        text: `${describeTake(take)}: ${quantity} ${ratio.toFixed(1)} σ off`,
      })),
  );
  report.worst(
    'Furthest beyond what was stated',
    far
      .sort((a, b) => b.size - a.size)
      .slice(0, 10)
      .map(({ text }) => text),
  );
}
