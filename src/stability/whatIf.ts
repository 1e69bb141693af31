/**
 * What a fault would look like in the records, and when it would be found: invented histories with the fault in them, judged after each
 * further visit as the real ones are. Steady instruments go through the same, so that false alarms are seen, too.
 * Everything about the invented piano but the fault is `usualPlan` of simulation/historyPlan.ts, with its sources and standing.
 */
import { yearsBetween } from './changeIntervals.ts';
import { analyseDrift, type Drift } from './drift/analyseDrift.ts';
import { usualUncertaintyCents } from './drift/history.ts';
import { seededNormal } from './drift/seededNormal.ts';
import type { VerdictState } from './drift/verdict.ts';
import { seededSimulation } from './seededRandom.ts';
import { simulateHistory } from './simulateHistory.ts';
import { type HistoryPlan, regularVisits, USUAL_CLIMATE, usualPlan } from './simulation/historyPlan.ts';

export type WhatIfQuestion = {
  /** Rates are how fast the strings fall: above zero. */
  readonly fault:
    | { readonly kind: 'none' }
    | { readonly kind: 'pins'; readonly pinCount: number; readonly centsPerYear: number }
    | { readonly kind: 'zone'; readonly noteCount: number; readonly centsPerYear: number };
  readonly visitsPerYear: 1 | 2 | 3 | 4;
  /** Factor on the usual repeatability of a reading. */
  readonly noiseFactor: number;
  readonly isHumidityNoted: boolean;
  readonly thresholdCentsPerYear: number;
};

export type WhatIfTrial = {
  readonly seed: number;
  readonly checks: readonly {
    readonly years: number;
    readonly state: VerdictState;
    /** Share of the strings at fault that are named, by themselves or as part of a zone; 0 where nothing is at fault. */
    readonly foundShare: number;
    /** Strings named that nothing is wrong with. */
    readonly wrongCount: number;
  }[];
};

/** When somebody looks. A judgement takes half a second or so: not after each visit. */
const CHECK_YEARS = [1, 2, 3, 4, 6, 8];
const WHAT_IF_YEARS = 8;
const FIRST_ON = '2020-03-01';
const LEAST_VISITS = 4;

/** One invented instrument. The same question and seed give the same trial. */
export function whatIfTrial(question: WhatIfQuestion, seed: number): WhatIfTrial {
  const random = seededSimulation(seed);
  const plan = planOf(question, random.uniform);
  const { readings, events, truth } = simulateHistory(plan, random);
  const atFault = new Set(truth.strings.filter((string) => string.slipCentsPerYear < 0).map((string) => string.midi));
  const dates = plan.visits.map((visit) => visit.on);
  const checks = checkVisits(question.visitsPerYear).map((visitCount) => {
    const until = dates[visitCount - 1] ?? '';
    const drift = analyseDrift({
      readings: readings.filter((reading) => reading.visitedOn <= until),
      events,
      instrument: {
        compass: plan.compass,
        bassBridgeTopMidi: plan.bassBridgeTopMidi,
        strutsAfterMidi: plan.strutsAfterMidi,
      },
      thresholdCentsPerYear: question.thresholdCentsPerYear,
      random: seededNormal(seed),
    });
    return { years: yearsBetween(FIRST_ON, until), state: drift.verdict.state, ...found(drift, atFault) };
  });
  return { seed, checks };
}

/** Numbers of visits after which the judgement is made. */
function checkVisits(visitsPerYear: number): number[] {
  return CHECK_YEARS.map((years) => years * visitsPerYear + 1).filter((count) => count >= LEAST_VISITS);
}

function planOf(question: WhatIfQuestion, uniform: () => number): HistoryPlan {
  const { fault, visitsPerYear, noiseFactor, isHumidityNoted } = question;
  const visits = regularVisits(FIRST_ON, WHAT_IF_YEARS * visitsPerYear + 1, 12 / visitsPerYear);
  const climate = { ...USUAL_CLIMATE, unnotedShare: isHumidityNoted ? 0 : 1 };
  const readingNoiseCents = (midi: number) => noiseFactor * usualUncertaintyCents(midi);
  const plan = { ...usualPlan({ visits, climate }), readingNoiseCents };
  if (fault.kind === 'pins') return { ...plan, slips: slipsOf(fault.pinCount, fault.centsPerYear, plan, uniform) };
  if (fault.kind === 'none') return plan;
  const fromMidi = between(plan.bassBridgeTopMidi + 3, plan.compass.highestMidi - 6 - fault.noteCount, uniform);
  const zone = { fromMidi, toMidi: fromMidi + fault.noteCount - 1, fromDate: FIRST_ON };
  return { ...plan, zone: { ...zone, firstCentsPerYear: -fault.centsPerYear, growthCentsPerYear2: 0 } };
}

function slipsOf(count: number, centsPerYear: number, plan: HistoryPlan, uniform: () => number): HistoryPlan['slips'] {
  const midis = new Set<number>();
  while (midis.size < count) midis.add(between(plan.compass.lowestMidi, plan.compass.highestMidi, uniform));
  return [...midis].map((midi) => ({ midi, stringPosition: 2, centsPerYear: -centsPerYear, fromDate: FIRST_ON }));
}

function between(low: number, high: number, uniform: () => number): number {
  return low + Math.floor(uniform() * (high - low + 1));
}

function found({ pins, zones }: Drift, atFault: ReadonlySet<number>): { foundShare: number; wrongCount: number } {
  const named = new Set(pins.filter((pin) => pin.isFlagged).map((pin) => pin.midi));
  for (const zone of zones) for (let midi = zone.fromMidi; midi <= zone.toMidi; midi++) named.add(midi);
  const right = [...atFault].filter((midi) => named.has(midi)).length;
  return { foundShare: atFault.size === 0 ? 0 : right / atFault.size, wrongCount: named.size - right };
}

export type WhatIfSummary = {
  readonly trialCount: number;
  readonly byYear: readonly {
    readonly years: number;
    /** Share of the trials whose verdict warns, with something that is really at fault named. */
    readonly foundShare: number;
    /** Share that warns at all. */
    readonly warnsShare: number;
    /** Share that says holding. */
    readonly holdsShare: number;
    /** Share that names a string which nothing is wrong with. */
    readonly falseShare: number;
    /** Mean share of the strings at fault that are named. */
    readonly namedShare: number;
  }[];
  /** Years until half, and until nine in ten, of the trials found it; null where that was never so. */
  readonly halfFoundYears: number | null;
  readonly mostFoundYears: number | null;
};

const HALF = 0.5;
const MOST = 0.9;

export function summariseTrials(trials: readonly WhatIfTrial[]): WhatIfSummary {
  const byYear = (trials[0]?.checks ?? []).map(({ years }, index) => {
    const checks = trials.flatMap((trial) => trial.checks[index] ?? []);
    const share = (holds: (check: WhatIfTrial['checks'][number]) => boolean) =>
      checks.filter(holds).length / checks.length;
    return {
      years,
      foundShare: share((check) => isWarning(check.state) && check.foundShare > 0),
      warnsShare: share((check) => isWarning(check.state)),
      holdsShare: share((check) => check.state === 'holding'),
      falseShare: share((check) => check.wrongCount > 0),
      namedShare: checks.reduce((sum, check) => sum + check.foundShare, 0) / checks.length,
    };
  });
  const since = (share: number) => foundFrom(byYear, share);
  return { trialCount: trials.length, byYear, halfFoundYears: since(HALF), mostFoundYears: since(MOST) };
}

function isWarning(state: VerdictState): boolean {
  return state === 'watch' || state === 'giving way';
}

/** From when on the share stays reached. */
function foundFrom(byYear: WhatIfSummary['byYear'], share: number): number | null {
  const lastBelow = byYear.findLastIndex((check) => check.foundShare < share);
  return byYear[lastBelow + 1]?.years ?? null;
}
