/** Table 9: slipping pins, failing zones and false alarms on invented histories, beside two simple ways on the same ones. */
import { median, percentOf } from '../support/statistics.ts';
import { type Bench, sized } from './bench.ts';
import {
  borderErrors,
  ceilingPercent,
  countFlags,
  coverage,
  type FlagCount,
  falseAlarmPercent,
  isSlipping,
  kindestLimits,
  matchingZone,
  type Way,
} from './driftFigures.ts';
import type { DriftResult, JudgedString } from './driftJob.ts';
import { DRIFT_ROWS, type DriftRowName } from './driftPlans.ts';
import { driftSpeedTable } from './driftSpeedTable.ts';
import { figure, percent, type Report } from './report.ts';

type Rows = ReadonlyMap<DriftRowName, readonly DriftResult[]>;

const FIRST_SEED = 5001;

export async function driftTable(bench: Bench): Promise<void> {
  const count = sized(bench, 8, 40);
  const inputs = DRIFT_ROWS.flatMap((row) => Array.from({ length: count }, (_, k) => ({ row, seed: FIRST_SEED + k })));
  const results = await bench.pool.run('drift', inputs);
  const rows: Rows = new Map(DRIFT_ROWS.map((row, r) => [row, results.slice(r * count, (r + 1) * count)]));
  const ways = waysOf(rows);
  pinTable(bench.report, rows, ways, count);
  instrumentTable(bench.report, rows);
  limits(bench.report, rows, ways);
  driftSpeedTable(bench);
}

function waysOf(rows: Rows): Way[] {
  const all = [...rows.values()].flat();
  const falls = (string: JudgedString, limit: number) => string.spreadsheet > limit;
  const cents = kindestLimits(all, range(1, 25, 0.5), falls);
  const pairs = range(0.3, 4, 0.1).flatMap((rate) => range(0, 6, 0.5).map((errors) => ({ rate, errors })));
  const lags = ({ neighbours }: JudgedString, limit: (typeof pairs)[number]) =>
    neighbours.centsPerYear > limit.rate && neighbours.errors > limit.errors;
  const pair = kindestLimits(all, pairs, lags);
  return [
    { name: 'Stillpin', flags: (string) => string.isFlagged },
    { name: `spreadsheet: twice ${figure(cents)} cents flat`, flags: (string) => falls(string, cents) },
    {
      name: `neighbours: ${figure(pair.rate)} cents a year and ${figure(pair.errors)} of its errors flat of them`,
      flags: (string) => lags(string, pair),
    },
  ];
}

function range(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, k) => from + k * step);
}

function pinTable(report: Report, rows: Rows, ways: readonly Way[], count: number): void {
  report.heading(`9a  Slipping pins on ${count} invented instruments a row`);
  report.table(
    ['histories', 'way', 'found %', 'ceiling %', 'right of flagged %', 'wrong flags', 'instruments wronged %'],
    [...rows].flatMap(([row, results]) =>
      ways.map((way, w) => {
        const { right, wrong, slipping, wronged } = countFlags(results, way);
        return [
          w === 0 ? row : '',
          way.name,
          slipping === 0 ? '–' : percent((100 * right) / slipping),
          w === 0 && row !== 'failing zone, 8 intervals after its start' ? percent(ceilingPercent(results)) : '',
          right + wrong === 0 || slipping === 0 ? '–' : percent((100 * right) / (right + wrong)),
          String(wrong),
          percent((100 * wronged) / results.length),
        ];
      }),
    ),
  );
  report.remark(
    'Ceiling: what could be found with 5 % of flags wrong if weather, noise and the slip’s size were known. The simple ways have the limits that do best on all rows together.',
  );
}

function instrumentTable(report: Report, rows: Rows): void {
  report.heading('9b  Verdicts, zones and uncertainties');
  report.table(
    ['histories', 'false alarm %', 'holding %', 'zones found %', 'border, notes', '95 % holds: steady', 'slipping'],
    [...rows].map(([row, results]) => {
      const hasZone = results.some(({ trueZone }) => trueZone);
      return [
        row,
        percent(falseAlarmPercent(results)),
        percent(percentOf(results, ({ state }) => state === 'holding')),
        hasZone ? percent(percentOf(results, (result) => matchingZone(result) !== undefined)) : '–',
        figure(median(borderErrors(results))),
        percent(coverage(results, (string) => !isSlipping(string))),
        percent(coverage(results, isSlipping)),
      ];
    }),
  );
  for (const [row, results] of rows) report.worst(`False alarms, ${row}`, falseAlarms(results));
}

function falseAlarms(results: readonly DriftResult[]): string[] {
  return results.flatMap((result) => {
    if (!falseAlarmPercent([result])) return [];
    const pins = result.strings.filter((string) => string.isFlagged && !isSlipping(string));
    const zones = result.zones.map(({ fromMidi, toMidi }) => `${fromMidi}–${toMidi}`);
    return [
      `seed ${result.seed}: pins ${pins.map(({ name }) => name).join(' ') || 'none'}, zones ${zones.join(' ') || 'none'}`,
    ];
  });
}

function limits(report: Report, rows: Rows, ways: readonly Way[]): void {
  const of = (row: DriftRowName) => rows.get(row) ?? [];
  const found = (row: DriftRowName) => {
    const { right, slipping } = countFlags(of(row), { name: '', flags: (string) => string.isFlagged });
    return slipping === 0 ? undefined : (100 * right) / slipping;
  };
  const steady = of('steady, 10 years');
  const zone = of('failing zone, 8 intervals after its start');
  const all = [...rows.values()].flat();
  const flags = countFlags(all, { name: '', flags: (string) => string.isFlagged });
  const faults = of('steady, two notes mis-set').map(({ faultsListed }) => 100 * (faultsListed ?? 0));
  const young = of('newly strung').flatMap(({ firstYear }) => firstYear ?? []);
  const isNear = (one: (typeof young)[number]) => one.found !== null && Math.abs(one.found / one.truth - 1) < 0.3;
  const least = (what: string, measured: number | undefined, atLeast: number) =>
    report.limit({ what, measured, unit: '%', atLeast });
  const most = (what: string, measured: number | undefined, atMost: number, unit = '%') =>
    report.limit({ what, measured, unit, atMost });
  most('steady, 10 years: instruments with a false alarm', falseAlarmPercent(steady), 5);
  least(
    'steady, 10 years: verdict holding',
    percentOf(steady, ({ state }) => state === 'holding'),
    95,
  );
  for (const row of DRIFT_ROWS.filter((name) => name.startsWith('2 cents')))
    least(`pins found: ${row}`, found(row), 90);
  for (const row of DRIFT_ROWS.filter((name) => name.startsWith('1 cent'))) least(`pins found: ${row}`, found(row), 80);
  simpleWaysLimits(report, rows, ways);
  most('wrong among all flagged pins of all rows', (100 * flags.wrong) / Math.max(1, flags.right + flags.wrong), 5);
  least(
    'failing zones found',
    percentOf(zone, (result) => matchingZone(result) !== undefined),
    90,
  );
  most('failing zones: border error, median', median(borderErrors(zone)), 2, 'notes');
  most('newly strung: instruments with a false alarm', falseAlarmPercent(of('newly strung')), 5);
  least('newly strung: fall of the first year within 30 %', percentOf(young, isNear), 90);
  least('wrong readings listed', faults.reduce((sum, share) => sum + share, 0) / Math.max(1, faults.length), 95);
  most('no humidity: instruments with a false alarm', falseAlarmPercent(of('steady and slipping, no humidity')), 5);
  report.limit({
    what: '95 % intervals of all strings hold the true rate',
    measured: coverage(all, () => true),
    unit: '%',
    atLeast: 92,
    atMost: 98,
  });
}

/** Ours beside the neighbours' way over all rows with slipping pins: both shares, in one run. */
function simpleWaysLimits(report: Report, rows: Rows, ways: readonly Way[]): void {
  const slipping = [...rows.values()]
    .filter((results) => results.some(({ strings }) => strings.some(isSlipping)))
    .flat();
  const [ours, , neighbours] = ways.map((way) => countFlags(slipping, way));
  const rightOf = ({ right, wrong }: FlagCount) => (100 * right) / Math.max(1, right + wrong);
  const foundOf = (count: FlagCount) => (100 * count.right) / Math.max(1, count.slipping);
  report.limit({
    what: 'right of flagged, all histories with slips, beside the neighbours’ way',
    measured: rightOf(ours!),
    unit: '%',
    atLeast: Number(rightOf(neighbours!).toFixed(1)),
  });
  report.limit({
    what: 'slipping pins found, all histories with slips, beside the neighbours’ way',
    measured: foundOf(ours!),
    unit: '%',
    atLeast: Number(foundOf(neighbours!).toFixed(1)),
  });
}
