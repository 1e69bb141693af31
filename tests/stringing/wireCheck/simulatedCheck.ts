/** The invented schedule with some wires of another size than it states, and the inharmonicity that would be measured. */
import { readFileSync } from 'node:fs';
import { readScheduleCsv } from '../../../src/files/scheduleCsv.ts';
import type { ScheduleRow } from '../../../src/piano/stringingRecords.ts';
import { gaugeOfNumber, nearestGauge } from '../../../src/piano/wireGauge.ts';
import { analyseScale } from '../../../src/stringing/scale/analyseScale.ts';
import type { StringInharmonicity } from '../../../src/stringing/wireCheck/measuredNotes.ts';
import { seededRandom } from '../../support/seededRandom.ts';

export type CheckPlan = {
  readonly seed: number;
  /** A slip in the schedule beside right wires, or a wrong wire on the piano beside a right schedule. */
  readonly wrongIn: 'schedule' | 'piano';
  readonly wrongCount: number;
  /** How many gauge numbers off: 1 or a half. */
  readonly numbersOff: number;
  /** Relative standard error of each B, told with it. */
  readonly errorShare: number;
  /** One sigma of what all strings are off by alike, in log B. */
  readonly commonSigma?: number;
};

export type SimulatedCheck = {
  readonly stated: readonly ScheduleRow[];
  readonly measured: readonly StringInharmonicity[];
  /** The true diameter of the strings that the schedule has wrong, in mm. */
  readonly wrong: ReadonlyMap<number, number>;
};

const file = new URL('../../reference/stringing/schedule88.csv', import.meta.url);
const read = readScheduleCsv(readFileSync(file, 'utf8'));
export const RIGHT_ROWS: readonly ScheduleRow[] = read.ok ? read.rows : [];

export function simulateCheck(plan: CheckPlan): SimulatedCheck {
  const random = seededRandom(plan.seed);
  const changed = otherSizes(plan, random.uniform);
  const altered = RIGHT_ROWS.map((row) => ({ ...row, wireDiameterMm: changed.get(row.midi) ?? row.wireDiameterMm }));
  const [stated, strung] = plan.wrongIn === 'schedule' ? [altered, RIGHT_ROWS] : [RIGHT_ROWS, altered];
  const common = (plan.commonSigma ?? 0.08) * random.normal();
  const slope = 0.001 * random.normal();
  const measured = analyseScale(strung, { pitchStandardHz: 440 }).notes.flatMap(({ midi, isWound, predictedB }) => {
    if (isWound || predictedB === null) return [];
    const error = common + slope * (midi - 70) + plan.errorShare * random.normal();
    const inharmonicityB = predictedB * Math.exp(error);
    const inharmonicityBStandardUncertainty = plan.errorShare * inharmonicityB;
    return [{ midi, stringPosition: 1 as const, inharmonicityB, inharmonicityBStandardUncertainty }];
  });
  const trueSizes = new Map(strung.map((row) => [row.midi, row.wireDiameterMm ?? 0]));
  return { stated, measured, wrong: new Map([...changed.keys()].map((midi) => [midi, trueSizes.get(midi) ?? 0])) };
}

function otherSizes({ wrongCount, numbersOff }: CheckPlan, uniform: () => number): Map<number, number> {
  const plain = RIGHT_ROWS.filter(({ wrap }) => wrap === null);
  const changed = new Map<number, number>();
  while (changed.size < wrongCount) {
    const row = plain[Math.floor(uniform() * plain.length)];
    const gauge = nearestGauge('metric', row?.wireDiameterMm ?? 0);
    const way = uniform() < 0.5 ? 1 : -1;
    const other = gauge && gaugeOfNumber('metric', gauge.gaugeNumber + way * numbersOff);
    if (row && other) changed.set(row.midi, other.diameterMm);
  }
  return changed;
}
