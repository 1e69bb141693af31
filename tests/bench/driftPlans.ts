/** Invented instruments for the tables on drift: what is asked of each row, and everything else drawn at random. */
import { COMPASS_85, COMPASS_88 } from '../../src/piano/compass.ts';
import { usualUncertaintyCents } from '../../src/stability/drift/history.ts';
import {
  asStrung,
  centreString,
  type HistoryPlan,
  type PlannedFault,
  type PlannedSlip,
  type PlannedVisit,
  regularVisits,
  type SimulationRandom,
  USUAL_CLIMATE,
  usualPlan,
} from '../../src/stability/simulation/historyPlan.ts';

export type DriftRowName = keyof typeof ROWS;

const FIRST_VISIT = '2012-04-10';

/** Each draws its own part of a plan; the instrument and its room come first. */
const ROWS = {
  'steady, 10 years': (random: SimulationRandom, plan: HistoryPlan): HistoryPlan => ({
    ...plan,
    visits: loose(random, regularVisits(FIRST_VISIT, random.uniform() < 0.5 ? 21 : 31, 120 / 25)),
    climate: { ...plan.climate, swingPct: 15 },
    unisonSplitCentsPerPct: 0.1 + 0.3 * random.uniform(),
  }),
  '2 cents a year, 6 half-years, readings good to 0.5': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -2, visitCount: 7, readingCents: 0.5, everyMonths: 6 }),
  '1 cent a year, 12 half-years, readings good to 0.5': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -1, visitCount: 13, readingCents: 0.5, everyMonths: 6 }),
  '2 cents a year, 6 years, readings good to 0.5': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -2, visitCount: 7, readingCents: 0.5, everyMonths: 12 }),
  '1 cent a year, 12 years, readings good to 0.5': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -1, visitCount: 13, readingCents: 0.5, everyMonths: 12 }),
  '2 cents a year, 6 half-years, readings good to 0.25': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -2, visitCount: 7, readingCents: 0.25, everyMonths: 6 }),
  '1 cent a year, 12 half-years, readings good to 0.25': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -1, visitCount: 13, readingCents: 0.25, everyMonths: 6 }),
  '1.5 cents a year, 20 half-years, readings good to 0.5': (random: SimulationRandom, plan: HistoryPlan) =>
    withSlips(random, plan, { centsPerYear: -1.5, visitCount: 21, readingCents: 0.5, everyMonths: 6 }),
  'failing zone, 8 intervals after its start': withZone,
  'newly strung': (random: SimulationRandom, plan: HistoryPlan): HistoryPlan => ({
    ...plan,
    visits: loose(random, youngVisits(random)),
    settling: {
      restrungOn: '2012-03-25',
      totalCents: 12 + 18 * random.uniform(),
      timeConstantYears: 0.3 + 0.6 * random.uniform(),
    },
  }),
  'steady, two notes mis-set': withFaults,
  'steady and slipping, no humidity': (random: SimulationRandom, plan: HistoryPlan): HistoryPlan => {
    const own =
      random.uniform() < 0.5
        ? withSlips(random, plan, { centsPerYear: -2, visitCount: 7, readingCents: 0.25, everyMonths: 6 })
        : { ...plan, visits: loose(random, regularVisits(FIRST_VISIT, 17, 5)) };
    return { ...own, climate: { ...own.climate, unnotedShare: 1 } };
  },
};

export const DRIFT_ROWS = Object.keys(ROWS) as DriftRowName[];

/** The plan of one instrument of a row. */
export function driftPlan(row: DriftRowName, random: SimulationRandom): HistoryPlan {
  return ROWS[row](random, randomInstrument(random));
}

/** Sizes about those of usualPlan: half as large or half as large again. Invented. */
function randomInstrument(random: SimulationRandom): HistoryPlan {
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const bassBridgeTopMidi = Math.floor(between(39, 47));
  const noiseFactor = between(0.7, 1.3);
  return usualPlan({
    compass: random.uniform() < 0.2 ? COMPASS_85 : COMPASS_88,
    bassBridgeTopMidi,
    strutsAfterMidi: [bassBridgeTopMidi, Math.floor(between(66, 74)), Math.floor(between(86, 94))],
    stringsOf: random.uniform() < 0.5 ? centreString : asStrung(bassBridgeTopMidi),
    climate: {
      ...USUAL_CLIMATE,
      swingPct: between(7, 15),
      dayWeatherPct: between(3, 6),
      dryingPctPerYear: 0.3 * random.normal(),
      lagDays: between(3, 30),
      hygrometerErrorPct: between(1, 3),
      temperatureScatterC: between(0.7, 2),
    },
    responseFactor: between(0.5, 1.5),
    responseScatter: between(0.08, 0.2),
    unisonSplitCentsPerPct: between(0, 0.3),
    driftCentsPerYear: between(-1, 0),
    registerCents: between(0.3, 0.9),
    patchCents: between(0.05, 0.3),
    strayCents: between(0.15, 0.35),
    strayCentsPerRootYear: between(0.2, 0.5),
    largeStrayShare: between(0, 0.04),
    readingNoiseCents: (midi) => noiseFactor * usualUncertaintyCents(midi),
    isUncertaintyStated: random.uniform() < 0.7,
    missingNoteShare: between(0, 0.05),
  });
}

/** Visits up to three weeks early or late. */
function loose(random: SimulationRandom, visits: readonly PlannedVisit[]): PlannedVisit[] {
  return visits.map((visit) => {
    const days = Math.round(42 * random.uniform() - 21);
    return { ...visit, on: new Date(Date.parse(visit.on) + days * 86_400_000).toISOString().slice(0, 10) };
  });
}

/** A new piano's first five years: every three months or so at first, then twice a year. */
function youngVisits(random: SimulationRandom): PlannedVisit[] {
  const first = regularVisits('2012-04-20', 5, 2.5);
  return [...first, ...regularVisits('2013-06-15', 3 + Math.floor(4 * random.uniform()), 6)];
}

type SlipRow = {
  readonly centsPerYear: number;
  readonly visitCount: number;
  readonly readingCents: number;
  readonly everyMonths: number;
};

/** One to four pins, anywhere, from the first visit on; strings that stray little, so that the readings limit. */
function withSlips(random: SimulationRandom, plan: HistoryPlan, row: SlipRow): HistoryPlan {
  const visits = loose(random, regularVisits(FIRST_VISIT, row.visitCount, row.everyMonths));
  const count = 1 + Math.floor(4 * random.uniform());
  const slips = Array.from({ length: count }, (): PlannedSlip => {
    const { midi, stringPosition } = anyString(random, plan);
    return { midi, stringPosition, centsPerYear: row.centsPerYear, fromDate: '2012-01-01' };
  });
  const isDouble = (slip: PlannedSlip, at: number) => slips.findIndex((other) => other.midi === slip.midi) < at;
  return {
    ...plan,
    visits,
    readingNoiseCents: () => row.readingCents,
    strayCents: 0.2,
    strayCentsPerRootYear: 0.25,
    largeStrayShare: 0.01,
    slips: slips.filter((slip, at) => !isDouble(slip, at)),
  };
}

function anyString(random: SimulationRandom, plan: HistoryPlan) {
  const { lowestMidi, highestMidi } = plan.compass;
  const midi = lowestMidi + Math.floor((highestMidi - lowestMidi + 1) * random.uniform());
  const positions = plan.stringsOf(midi);
  return { midi, stringPosition: positions[Math.floor(positions.length * random.uniform())]! };
}

/** Ten to fifteen notes, most often beside a strut, from 1 cent a year and growing; two to six quiet intervals before. */
function withZone(random: SimulationRandom, plan: HistoryPlan): HistoryPlan {
  const length = 10 + Math.floor(6 * random.uniform());
  const { lowestMidi, highestMidi } = plan.compass;
  const strut = plan.strutsAfterMidi[Math.floor(plan.strutsAfterMidi.length * random.uniform())]!;
  const anywhere = lowestMidi + Math.floor((highestMidi - lowestMidi - length) * random.uniform());
  const beside = random.uniform() < 0.5 ? strut + 1 : strut - length + 1;
  const wanted = random.uniform() < 0.75 ? beside : anywhere;
  const fromMidi = Math.max(lowestMidi, Math.min(wanted, highestMidi - length + 1));
  const quietCount = 2 + Math.floor(5 * random.uniform());
  const visits = loose(random, regularVisits(FIRST_VISIT, quietCount + 9, 6));
  return {
    ...plan,
    visits,
    zone: {
      fromMidi,
      toMidi: fromMidi + length - 1,
      firstCentsPerYear: -1,
      growthCentsPerYear2: -0.2 - 0.4 * random.uniform(),
      fromDate: visits[quietCount]!.on,
    },
  };
}

/** A note that the tuner left some cents off, and a wrong take in a survey of what was found. */
function withFaults(random: SimulationRandom, plan: HistoryPlan): HistoryPlan {
  const visits = loose(random, regularVisits(FIRST_VISIT, 9 + Math.floor(8 * random.uniform()), 6));
  const faults = (['as-left', 'as-found'] as const).map((stage): PlannedFault => {
    const on = visits[1 + Math.floor((visits.length - 2) * random.uniform())]!.on;
    const cents = (random.uniform() < 0.5 ? -1 : 1) * (7 + 6 * random.uniform());
    return { on, stage, ...anyString(random, plan), cents };
  });
  return { ...plan, visits, faults };
}
