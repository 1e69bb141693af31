/** Table 1: how near the truth partial 1, F0 and B are. */
import { hzToCents } from '../../src/piano/cents.ts';
import { midiToName } from '../../src/piano/note.ts';
import { median, percentOf, quantile } from '../support/statistics.ts';
import {
  type AccuracyTake,
  describeTake,
  LENGTHS_S,
  PLAIN_LENGTH_S,
  PLAIN_SNR_DB,
  partial1ErrorCents,
  SNRS_DB,
} from './accuracyTakes.ts';
import { REGISTERS } from './randomString.ts';
import { figure, percent, type Report } from './report.ts';

const TITLES = [
  'register',
  'condition',
  'takes',
  'named rightly %',
  'wrongly %',
  'no note %',
  'partial 1 median cents',
  '95 % below',
  'F0 median cents',
  '95 % below',
  'B median %',
  '95 % below',
  'B given %',
];

export function accuracyTables(takes: readonly AccuracyTake[], report: Report): void {
  report.heading('1a  Error of one string, by register and noise, takes of 3 s');
  const atPlainLength = takes.filter((take) => take.lengthS === PLAIN_LENGTH_S);
  report.table(
    TITLES,
    rowsOf(atPlainLength, SNRS_DB, (take) => take.snrDb, 'dB'),
  );
  report.remark(
    'Noise: RMS of the tone over its first 0.5 s to RMS of white noise over the whole band of 24 kHz. Errors are of the takes named\n' +
      'rightly. The synthetic partials lie on the curve exactly, as those of a real string do not; real B and F0 are less certain.',
  );
  accuracyLimits(takes, report);
  report.heading('1b  Error of one string, by register and length, noise 20 dB down');
  const atPlainNoise = takes.filter((take) => take.snrDb === PLAIN_SNR_DB);
  report.table(
    TITLES,
    rowsOf(atPlainNoise, LENGTHS_S, (take) => take.lengthS, 's'),
  );
  worstTakes(takes, report);
}

function rowsOf(
  takes: readonly AccuracyTake[],
  values: readonly number[],
  conditionOf: (take: AccuracyTake) => number,
  unit: string,
): string[][] {
  return REGISTERS.flatMap((register) =>
    values.map((value) => {
      const cell = takes.filter((take) => take.register === register && conditionOf(take) === value);
      const named = cell.filter((take) => take.isNamedRightly);
      const bErrors = bErrorsPercent(named);
      return [
        register.name,
        `${value} ${unit}`,
        String(cell.length),
        percent(percentOf(cell, (take) => take.isNamedRightly)),
        percent(percentOf(cell, isNamedWrongly)),
        percent(percentOf(cell, (take) => take.reading === null)),
        ...medianAnd95(named.map(partial1ErrorCents)),
        ...medianAnd95(f0ErrorsCents(named)),
        ...medianAnd95(bErrors),
        percent(named.length === 0 ? undefined : (100 * bErrors.length) / named.length),
      ];
    }),
  );
}

function isNamedWrongly({ reading, isNamedRightly }: AccuracyTake): boolean {
  return reading !== null && !isNamedRightly;
}

function medianAnd95(errors: readonly number[]): string[] {
  return [figure(median(errors)), figure(quantile(errors, 0.95))];
}

function f0ErrorsCents(takes: readonly AccuracyTake[]): number[] {
  return takes.flatMap(({ reading, string }) => {
    const f0Hz = reading?.f0Hz ?? null;
    return f0Hz === null ? [] : [Math.abs(hzToCents(f0Hz, string.f0Hz))];
  });
}

function bErrorsPercent(takes: readonly AccuracyTake[]): number[] {
  return takes.flatMap(({ reading, string }) => {
    const b = reading?.inharmonicityB ?? null;
    return b === null ? [] : [100 * Math.abs(b / string.inharmonicityB - 1)];
  });
}

function accuracyLimits(takes: readonly AccuracyTake[], report: Report): void {
  const clear = takes.filter(({ snrDb, lengthS }) => snrDb >= 20 && lengthS >= 2);
  const isTop = ({ register }: AccuracyTake) => register === REGISTERS.at(-1);
  const errors = (group: readonly AccuracyTake[]) => group.filter((t) => t.isNamedRightly).map(partial1ErrorCents);
  const below = errors(clear.filter((take) => !isTop(take)));
  const top = errors(clear.filter(isTop));
  const named = (take: AccuracyTake) => take.isNamedRightly;
  const inB = bErrorsPercent(clear.filter((take) => named(take) && !isTop(take)));
  const inTopB = bErrorsPercent(clear.filter((take) => named(take) && isTop(take)));
  const where = '20 dB and up, 2 s and up';
  report.limit({
    what: `partial 1, A0–B5, ${where}, median error`,
    measured: median(below),
    unit: 'cents',
    atMost: 0.1,
  });
  report.limit({ what: `… 95 % of errors`, measured: quantile(below, 0.95), unit: 'cents', atMost: 0.5 });
  report.limit({ what: `partial 1, C6–C8, ${where}, median error`, measured: median(top), unit: 'cents', atMost: 0.3 });
  report.limit({ what: `… 95 % of errors`, measured: quantile(top, 0.95), unit: 'cents', atMost: 2 });
  report.limit({ what: `B, A0–B5, ${where}, median error`, measured: median(inB), unit: '%', atMost: 1 });
  report.limit({ what: `… 95 % of errors`, measured: quantile(inB, 0.95), unit: '%', atMost: 5 });
  report.limit({ what: `B, C6–C8, ${where}, median error`, measured: median(inTopB), unit: '%', atMost: 5 });
  report.limit({ what: `named rightly, ${where}`, measured: percentOf(clear, named), unit: '%', atLeast: 100 });
  const at10Db = takes.filter(({ snrDb }) => snrDb === 10);
  const noisy = takes.filter(({ snrDb }) => snrDb < 20);
  report.limit({ what: 'named rightly, 10 dB', measured: percentOf(at10Db, named), unit: '%', atLeast: 98 });
  report.limit({
    what: 'named wrongly and yet said to be usable, 0 and 10 dB',
    measured: percentOf(noisy, (take) => isNamedWrongly(take) && take.reading?.quality.isUsable === true),
    unit: '%',
    atMost: 0,
  });
  report.limit({
    what: 'named wrongly, 0 and 10 dB',
    measured: percentOf(noisy, isNamedWrongly),
    unit: '%',
    atMost: 2,
  });
}

function worstTakes(takes: readonly AccuracyTake[], report: Report): void {
  report.worst(
    'Named wrongly',
    takes.filter(isNamedWrongly).map((take) => `${describeTake(take)}: ${misnamedText(take)}`),
  );
  report.worst('No note found', takes.filter(({ reading }) => reading === null).map(describeTake));
  const clear = takes.filter((take) => take.isNamedRightly && take.snrDb >= 20);
  report.worst(
    'Largest errors of partial 1 at 20 dB and up',
    [...clear]
      .sort((a, b) => partial1ErrorCents(b) - partial1ErrorCents(a))
      .slice(0, 8)
      .map((take) => `${describeTake(take)}: ${partial1Text(take)}`),
  );
}

function partial1Text(take: AccuracyTake): string {
  const { reading } = take;
  if (!reading) return 'no reading';
  const stated = figure(reading.offsetStandardUncertaintyCents);
  return `${figure(partial1ErrorCents(take))} cents off, ${stated} stated, ${reading.partial1Source}`;
}

function misnamedText({ reading }: AccuracyTake): string {
  if (!reading) return 'no note';
  return `${midiToName(reading.midi)}, ${reading.quality.faults.join(' ') || 'said to be usable'}`;
}
