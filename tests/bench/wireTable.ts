/** Table 15: wrong diameters, from measured inharmonicity. */
import { percentOf } from '../support/statistics.ts';
import { type Bench, sized } from './bench.ts';
import { figure, percent } from './report.ts';
import type { WireJobResult } from './wireJob.ts';
import { B_ERROR_SHARE, type WirePlan } from './wirePlans.ts';

type Row = Pick<WirePlan, 'wrongIn' | 'wrongCount' | 'numbersOff' | 'stringsPerNote'> & { readonly name: string };
type Judged = { readonly plan: WirePlan; readonly result: WireJobResult };

const ONE_SLIP: Row = {
  name: 'slip in the schedule, one number',
  wrongIn: 'schedule',
  wrongCount: 3,
  numbersOff: 1,
  stringsPerNote: 1,
};
const ONE_WIRE: Row = { ...ONE_SLIP, name: 'wrong wire, one number', wrongIn: 'piano' };
const ROWS: readonly Row[] = [
  ONE_SLIP,
  ONE_WIRE,
  { ...ONE_SLIP, name: 'slip in the schedule, one number', stringsPerNote: 3 },
  { ...ONE_WIRE, name: 'wrong wire on two of three strings, one number', stringsPerNote: 3 },
  { ...ONE_SLIP, name: 'slip in the schedule, half a number', numbersOff: 0.5 },
  { ...ONE_WIRE, name: 'wrong wire, half a number', numbersOff: 0.5 },
  { ...ONE_SLIP, name: 'slip in the schedule, half a number', numbersOff: 0.5, stringsPerNote: 3 },
  { ...ONE_SLIP, name: 'nothing wrong', wrongCount: 0 },
  { ...ONE_SLIP, name: 'nothing wrong', wrongCount: 0, stringsPerNote: 3 },
];
/** The figures of the judgement were chosen with other scales in view: those of seeds from 500,000 on. */
const FIRST_SEED = 800_000;
/** Rows do not share scales. */
const SEEDS_A_ROW = 5000;

export async function wireTable({ pool, report, size }: Bench): Promise<void> {
  const count = sized({ size }, 20, 400);
  const plans = ROWS.map((row, index) =>
    Array.from({ length: count }, (_, turn): WirePlan => {
      const { wrongIn, wrongCount, numbersOff, stringsPerNote } = row;
      return { seed: FIRST_SEED + SEEDS_A_ROW * index + turn, wrongIn, wrongCount, numbersOff, stringsPerNote };
    }),
  );
  const results = await pool.run('wire', plans.flat());
  const judged = plans.map((own, row) => own.map((plan, turn) => ({ plan, result: results[row * count + turn]! })));
  report.heading('15  Three wrong diameters in a schedule of plain wire, from B measured to 2 %');
  report.table(
    [
      'what is wrong',
      'strings a note',
      'schedules',
      'found %',
      'three and none other %',
      'by the curve itself %',
      'right size %',
      'wrongly named in 100',
    ],
    ROWS.map((row, index) => rowOf(row, judged[index]!)),
  );
  report.remark(
    `53 to 69 notes of plain wire, metric and inch sizes, one to three struts, the piano’s own B off the formula by 3 to 10 % slowly along\n` +
      `the compass, each B with an error of ${100 * B_ERROR_SHARE} %, lengths to half a millimetre. By the curve itself: what a limit on the departures, the best\n` +
      'one for the row, gives to somebody who knows the piano’s own curve and the size of the error, but nothing of the run of the sizes.',
  );
  const [slip = [], wire = []] = judged;
  const clean = judged.at(-2) ?? [];
  const limits = [
    { what: 'three slips of one number in the schedule found, none other named', rows: slip, atLeast: 95 },
    { what: 'three wrong wires of one number found, none other named', rows: wire, atLeast: 95 },
  ];
  for (const { what, rows, atLeast } of limits)
    report.limit({ what, measured: percentOf(rows, isWhole), unit: '%', atLeast });
  report.limit({
    what: 'schedules without fault in which no note is named',
    measured: percentOf(clean, ({ result }) => result.namedMidis.length === 0),
    unit: '%',
    atLeast: 95,
  });
  report.worst('Slips of one number that went wrong', slip.filter((one) => !isWhole(one)).map(wireText));
  report.worst('Wrong wires of one number that went wrong', wire.filter((one) => !isWhole(one)).map(wireText));
}

function rowOf({ name, stringsPerNote, wrongCount }: Row, rows: readonly Judged[]): string[] {
  const wrong = rows.flatMap(({ result }) => result.wrongMidis.map((midi) => result.namedMidis.includes(midi)));
  const found = wrong.filter((isFound) => isFound).length;
  const sizedCount = rows.reduce((sum, { result }) => sum + result.sizedCount, 0);
  const others = rows.reduce((sum, { result }) => sum + namedWrongly(result).length, 0);
  return [
    name,
    String(stringsPerNote),
    String(rows.length),
    wrongCount === 0 ? '–' : percent((100 * found) / wrong.length),
    percent(percentOf(rows, isWhole)),
    wrongCount === 0 ? '–' : percent(bestByCurve(rows)),
    found === 0 ? '–' : percent((100 * sizedCount) / found),
    figure((100 * others) / rows.length),
  ];
}

function namedWrongly({ namedMidis, wrongMidis }: WireJobResult): number[] {
  return namedMidis.filter((midi) => !wrongMidis.includes(midi));
}

function isWhole({ result }: Judged): boolean {
  return result.namedMidis.length === result.wrongMidis.length && namedWrongly(result).length === 0;
}

/** Share of schedules at the limit that parts wrong from right in most of them. */
function bestByCurve(rows: readonly Judged[]): number {
  const limits = rows.map(({ result }) => result.leastWrongSigmas);
  const counts = limits.map(
    (limit) =>
      rows.filter(({ result }) => result.leastWrongSigmas >= limit && result.largestRightSigmas < limit).length,
  );
  return (100 * Math.max(...counts)) / rows.length;
}

function wireText({ plan, result }: Judged): string {
  return `seed ${plan.seed}, ${result.noteCount} notes: ${result.told.join('; ')}`;
}
