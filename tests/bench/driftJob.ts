/** One invented history: simulated, judged by us and by the two simple ways, and held against what is true of it. */
import { analyseDrift, type Drift } from '../../src/stability/drift/analyseDrift.ts';
import { changeTable } from '../../src/stability/drift/changeTable.ts';
import { seededNormal } from '../../src/stability/drift/seededNormal.ts';
import { JUDGEMENT_SEED } from '../../src/stability/judgementSeed.ts';
import { type SimulatedHistory, simulateHistory } from '../../src/stability/simulateHistory.ts';
import type { HistoryPlan } from '../../src/stability/simulation/historyPlan.ts';
import { settledCents, stringsOfPlan } from '../../src/stability/simulation/simulatedStrings.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { type DriftRowName, driftPlan } from './driftPlans.ts';
import { type NeighbourFigure, neighbourFigures, spreadsheetFigures } from './driftSimpleWays.ts';

export type DriftInput = { readonly row: DriftRowName; readonly seed: number };

export type JudgedString = {
  readonly name: string;
  readonly slipCentsPerYear: number;
  readonly isFlagged: boolean;
  readonly probability: number | null;
  readonly estimate: number | null;
  readonly standardUncertainty: number | null;
  /** Where everything but the string's own slip and noise is known: the standard uncertainty of its rate. */
  readonly leastUncertainty: number;
  readonly spreadsheet: number;
  readonly neighbours: NeighbourFigure;
};

export type DriftResult = {
  readonly seed: number;
  readonly strings: readonly JudgedString[];
  readonly zones: readonly { readonly fromMidi: number; readonly toMidi: number; readonly centsPerYear: number }[];
  readonly trueZone: { readonly fromMidi: number; readonly toMidi: number } | null;
  readonly state: Drift['verdict']['state'];
  readonly ruledOutCentsPerYear: number | null;
  /** Share of the planted wrong readings that were listed; null where none was planted. */
  readonly faultsListed: number | null;
  readonly otherOutlierCount: number;
  /** Found and true fall of the first year, cents; null where nothing settles. */
  readonly firstYear: { readonly found: number | null; readonly truth: number } | null;
  readonly processorMs: number;
};

export function driftJob({ row, seed }: DriftInput): DriftResult {
  const random = seededRandom(seed);
  const plan = driftPlan(row, random);
  const history = simulateHistory(plan, random);
  const isPlaceKnown = random.uniform() < 0.7;
  const before = process.cpuUsage();
  const drift = analyseDrift({
    readings: history.readings,
    events: history.events,
    instrument: {
      compass: plan.compass,
      bassBridgeTopMidi: isPlaceKnown ? plan.bassBridgeTopMidi : null,
      strutsAfterMidi: isPlaceKnown ? plan.strutsAfterMidi : [],
    },
    thresholdCentsPerYear: 1,
    random: seededNormal(JUDGEMENT_SEED),
  });
  const { user, system } = process.cpuUsage(before);
  const listed = plan.faults.filter((fault) =>
    drift.outliers.some(
      (outlier) =>
        outlier.midi === fault.midi &&
        outlier.stringPosition === fault.stringPosition &&
        outlier.visitedOn === fault.on,
    ),
  ).length;
  return {
    seed,
    strings: judgedStrings(plan, history, drift),
    zones: drift.zones.map(({ fromMidi, toMidi, centsPerYear }) => ({ fromMidi, toMidi, centsPerYear })),
    trueZone: plan.zone && { fromMidi: plan.zone.fromMidi, toMidi: plan.zone.toMidi },
    state: drift.verdict.state,
    ruledOutCentsPerYear: drift.verdict.slipRuledOutAboveCentsPerYear,
    faultsListed: plan.faults.length > 0 ? listed / plan.faults.length : null,
    otherOutlierCount: drift.outliers.length - listed,
    firstYear: firstYearOf(plan, drift, seed),
    processorMs: (user + system) / 1000,
  };
}

function judgedStrings(plan: HistoryPlan, history: SimulatedHistory, drift: Drift): JudgedString[] {
  const table = changeTable(history.readings, history.events);
  const spreadsheet = spreadsheetFigures(table);
  const neighbours = neighbourFigures(table);
  const truth = new Map(history.truth.strings.map((string) => [string.midi * 4 + string.stringPosition, string]));
  const pins = new Map(drift.pins.map((pin) => [pin.midi * 4 + pin.stringPosition, pin]));
  const information = table.strings.map(() => 0);
  for (const { stringIndex, intervalIndex } of table.changes) {
    const { years } = table.intervals[intervalIndex]!;
    information[stringIndex]! += years ** 2 / varianceCents2(plan, table.strings[stringIndex]!.midi, years);
  }
  return table.strings.map((string, i) => {
    const key = string.midi * 4 + string.stringPosition;
    const pin = pins.get(key)!;
    return {
      name: `${string.midi}/${string.stringPosition}`,
      slipCentsPerYear: truth.get(key)!.slipCentsPerYear,
      isFlagged: pin.isFlagged,
      probability: pin.slip.probability,
      estimate: pin.slip.centsPerYear,
      standardUncertainty: pin.slip.standardUncertainty,
      leastUncertainty: 1 / Math.sqrt(information[i]!),
      spreadsheet: spreadsheet[i]!,
      neighbours: neighbours[i]!,
    };
  });
}

/** Variance of one change: both readings' noise and what the string strays, the few large strays among it. */
function varianceCents2(plan: HistoryPlan, midi: number, years: number): number {
  const stray = plan.strayCents ** 2 + plan.strayCentsPerRootYear ** 2 * years;
  return 2 * plan.readingNoiseCents(midi) ** 2 + stray * (1 + 8 * plan.largeStrayShare);
}

function firstYearOf(plan: HistoryPlan, drift: Drift, seed: number): DriftResult['firstYear'] {
  if (!plan.settling) return null;
  const { restrungOn } = plan.settling;
  const yearOn = `${Number(restrungOn.slice(0, 4)) + 1}${restrungOn.slice(4)}`;
  const strings = stringsOfPlan(plan, seededRandom(seed));
  const mean = strings.reduce((sum, string) => sum + settledCents(plan, string, yearOn), 0) / strings.length;
  return { found: drift.settling?.firstYearCents ?? null, truth: mean + plan.driftCentsPerYear };
}
