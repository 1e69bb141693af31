/** An invented grand with a part of its block giving way, judged as any instrument is. */
import { type ChangePart, changeInParts, mostSeasonalInterval } from '../../stability/changeInParts.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { seededSimulation } from '../../stability/seededRandom.ts';
import { simulateHistory } from '../../stability/simulateHistory.ts';
import { USUAL_CLIMATE, usualPlan } from '../../stability/simulation/historyPlan.ts';
import { openDrift } from '../../workers/openDrift.ts';

export const FAILING = { fromMidi: 72, toMidi: 79 };
const SEED = 7;
/** A room that somebody looks after: what a pin does shows beside what the weather does on one scale. */
const EVEN_ROOM_SWING_PCT = 5;
/** The picture is of one of the last intervals, when all the visits before it stand behind it. */
const AMONG_LAST = 3;

export type InventedYears = {
  readonly parts: readonly ChangePart[];
  readonly from: string;
  readonly to: string;
  readonly namedMidis: readonly number[];
  readonly wrongCount: number;
};

export async function judgeInventedYears(): Promise<InventedYears> {
  const plan = usualPlan({
    climate: { ...USUAL_CLIMATE, swingPct: EVEN_ROOM_SWING_PCT },
    zone: { ...FAILING, firstCentsPerYear: -2.5, growthCentsPerYear2: 0, fromDate: '2015-03-01' },
  });
  const { readings, events } = simulateHistory(plan, seededSimulation(SEED));
  const { compass, bassBridgeTopMidi, strutsAfterMidi } = plan;
  const instrument = { compass, bassBridgeTopMidi, strutsAfterMidi };
  const drift = await judged({ readings, events, instrument, thresholdCentsPerYear: 1 });
  const index = mostSeasonalInterval(drift, AMONG_LAST);
  const interval = drift.intervals[index];
  if (!interval) throw new Error('there was no interval to show');
  const namedMidis = namedBy(drift);
  const isRight = (midi: number) => midi >= FAILING.fromMidi && midi <= FAILING.toMidi;
  return {
    parts: changeInParts(drift, index),
    from: interval.fromDate,
    to: interval.toDate,
    namedMidis,
    wrongCount: namedMidis.filter((midi) => !isRight(midi)).length,
  };
}

/** By themselves or as part of a zone. */
function namedBy({ pins, zones, detail }: Drift): number[] {
  const ofPins = pins.filter(({ isFlagged }) => isFlagged).map(({ midi }) => midi);
  const ofZones = detail.strings
    .map(({ midi }) => midi)
    .filter((midi) => zones.some(({ fromMidi, toMidi }) => midi >= fromMidi && midi <= toMidi));
  return [...new Set([...ofPins, ...ofZones])].sort((a, b) => a - b);
}

async function judged(history: Parameters<typeof judgeWork>[0]): Promise<Drift> {
  let found: Drift | null = null as Drift | null;
  await openDrift(judgeWork(history), (report) => {
    if (report.kind === 'judged') found = report.drift;
  }).ended;
  if (!found) throw new Error('the judgement did not end');
  return found;
}

function judgeWork(history: Extract<Parameters<typeof openDrift>[0], { kind: 'judge' }>['history']) {
  return { kind: 'judge' as const, history };
}
