/** Table 9c: what a judgement costs by the number of visits. */
import { analyseDrift } from '../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../src/stability/drift/seededNormal.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { type HistoryPlan, regularVisits, usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { median } from '../support/statistics.ts';
import { type Bench, sized } from './bench.ts';
import { figure } from './report.ts';

const VISIT_COUNTS = [15, 30, 60];
const ALL_STRINGS: HistoryPlan['stringsOf'] = () => [1, 2, 3];

/** To be called while the bench's threads are at rest. */
export function driftSpeedTable(bench: Bench): void {
  const { report, progress } = bench;
  const rows = VISIT_COUNTS.map((visitCount) => {
    progress(`analyseDrift, ${visitCount} visits`);
    const plan = usualPlan({ stringsOf: ALL_STRINGS, visits: regularVisits('2000-01-10', visitCount, 4) });
    const { readings, events } = simulateHistory(plan, seededRandom(visitCount));
    const times = Array.from({ length: sized(bench, 2, 4) }, () => processorS(() => judge(readings, events)));
    return { visitCount, readingCount: readings.length, seconds: median(times.slice(1)) ?? 0 };
  });
  const perReading = rows.map(({ seconds, readingCount }) => (1e6 * seconds) / readingCount);
  report.heading('9c  analyseDrift, 88 notes of three strings: processor time');
  report.table(
    ['visits', 'readings', 's', 'µs a reading'],
    rows.map(({ visitCount, readingCount, seconds }, row) => [
      String(visitCount),
      String(readingCount),
      figure(seconds),
      figure(perReading[row]),
    ]),
  );
  report.limit({
    what: 'analyseDrift, 88 notes, three strings, 60 visits',
    measured: rows.at(-1)?.seconds,
    unit: 's',
    atMost: 2,
  });
  report.limit({
    what: 'time a reading at 60 visits over that at 15 (linear: 1)',
    measured: (perReading.at(-1) ?? 0) / (perReading[0] ?? 1),
    unit: '',
    atMost: 1.5,
  });
}

function judge(
  readings: Parameters<typeof analyseDrift>[0]['readings'],
  events: Parameters<typeof analyseDrift>[0]['events'],
) {
  const instrument = { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [43, 71] };
  analyseDrift({ readings, events, instrument, thresholdCentsPerYear: 1, random: seededNormal(1) });
}

function processorS(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
