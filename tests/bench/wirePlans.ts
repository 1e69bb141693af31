/** Invented plain-wire scales with wrong diameters in the schedule or wrong wire on the piano, and the B that would be measured. */
import type { StringPosition } from '../../src/piano/reading.ts';
import type { ScheduleRow } from '../../src/piano/stringingRecords.ts';
import { gaugeOfNumber, nearestGauge } from '../../src/piano/wireGauge.ts';
import { noteFigures } from '../../src/stringing/scale/noteFigures.ts';
import type { StringInharmonicity } from '../../src/stringing/wireCheck/measuredNotes.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';
import { type InventedScale, inventScale, type WireSeries } from './wireScales.ts';

export type WirePlan = {
  readonly seed: number;
  /** A slip in the schedule beside right wires, or a wrong wire on the piano beside a right schedule. */
  readonly wrongIn: 'schedule' | 'piano';
  readonly wrongCount: number;
  /** How many gauge numbers off: 1 or a half. */
  readonly numbersOff: number;
  /** Strings recorded of each note. A wrong wire makes two of three wrong, as one length of wire goes round the hitch pin. */
  readonly stringsPerNote: 1 | 3;
};

export type WireCase = {
  readonly stated: readonly ScheduleRow[];
  readonly strutsAfterMidi: readonly number[];
  readonly measured: readonly StringInharmonicity[];
  /** True diameter of the wrong notes, in mm. */
  readonly wrong: ReadonlyMap<number, number>;
  /** log of each measured B over what the stated wire would give on this very piano, in errors' sigmas: all that is to be seen. */
  readonly departures: readonly { readonly midi: number; readonly sigmas: number }[];
};

export const B_ERROR_SHARE = 0.02;
const PITCH_STANDARD_HZ = 440;
/** One sigma of the length that the schedule states: to half a millimetre. */
const LENGTH_STEP_MM = 0.5;

export function wireCase(plan: WirePlan): WireCase {
  const random = seededRandom(plan.seed);
  const scale = inventScale(random);
  const changed = otherSizes(plan, scale, random);
  const altered = scale.rows.map((row) => ({ ...row, wireDiameterMm: changed.get(row.midi) ?? row.wireDiameterMm }));
  const [listed, strung] = plan.wrongIn === 'schedule' ? [altered, scale.rows] : [scale.rows, altered];
  const strings = scale.rows.flatMap((_, index) => stringsOf(plan, scale, index, { listed, strung }, random));
  const isStrutKnown = random.uniform() < 0.7;
  return {
    stated: listed.map((row) => ({ ...row, speakingLengthMm: rounded(row.speakingLengthMm ?? 0) })),
    strutsAfterMidi: isStrutKnown ? scale.breaksAfterMidi : [],
    measured: strings.map(({ reading }) => reading),
    wrong: new Map(
      [...changed.keys()].map((midi) => [midi, strung.find((row) => row.midi === midi)?.wireDiameterMm ?? 0]),
    ),
    departures: strings.map(({ reading: { midi }, sigmas }) => ({ midi, sigmas })),
  };
}

type BothRows = { readonly listed: readonly ScheduleRow[]; readonly strung: readonly ScheduleRow[] };

function stringsOf(
  { stringsPerNote, wrongIn }: WirePlan,
  scale: InventedScale,
  index: number,
  { listed, strung }: BothRows,
  random: SeededRandom,
) {
  const positions: readonly StringPosition[] = stringsPerNote === 3 ? [1, 2, 3] : [2];
  // The third string of a note hangs on another length of wire.
  const isRightWire = (position: StringPosition) => wrongIn === 'piano' && stringsPerNote === 3 && position === 3;
  const expected = predictedOf(listed[index]!);
  return positions.map((stringPosition) => {
    const row = isRightWire(stringPosition) ? listed[index]! : strung[index]!;
    const error = B_ERROR_SHARE * random.normal();
    const inharmonicityB = predictedOf(row) * Math.exp(scale.departure(row.midi) + error);
    const inharmonicityBStandardUncertainty = B_ERROR_SHARE * inharmonicityB;
    const sigmas = (Math.log(inharmonicityB / expected) - scale.departure(row.midi)) / B_ERROR_SHARE;
    return { reading: { midi: row.midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }, sigmas };
  });
}

function predictedOf(row: ScheduleRow): number {
  return noteFigures(row, PITCH_STANDARD_HZ).predictedB ?? Number.NaN;
}

function rounded(lengthMm: number): number {
  return Math.round(lengthMm / LENGTH_STEP_MM) * LENGTH_STEP_MM;
}

function otherSizes(
  { wrongCount, numbersOff }: WirePlan,
  { rows, series }: InventedScale,
  random: SeededRandom,
): Map<number, number> {
  const changed = new Map<number, number>();
  while (changed.size < wrongCount) {
    const row = rows[Math.floor(random.uniform() * rows.length)]!;
    const other = besideIt(series, row.wireDiameterMm ?? 0, random.uniform() < 0.5 ? numbersOff : -numbersOff);
    if (other !== undefined) changed.set(row.midi, other);
  }
  return changed;
}

function besideIt(series: WireSeries, diameterMm: number, numbers: number): number | undefined {
  const gauge = nearestGauge(series, diameterMm);
  return gauge && gaugeOfNumber(series, gauge.gaugeNumber + numbers)?.diameterMm;
}
