/** What an invented instrument is, what happens to it and how it is surveyed: all that simulateHistory needs, and usual values for it. */
import { COMPASS_88, type Compass } from '../../piano/compass.ts';
import type { SurveyStage } from '../../piano/instrument.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { type HistoryEvent, usualUncertaintyCents } from '../drift/history.ts';

/** Random numbers from outside: evenly spread in 0 ≤ x < 1, and standard normal. */
export type SimulationRandom = { uniform(): number; normal(): number };

export type PlannedVisit = {
  /** ISO 8601 calendar date; visits stand in the order of their dates. */
  readonly on: string;
  readonly surveys: 'both' | 'as-found' | 'as-left' | 'none';
  /** A tuning that no as-left survey shows becomes a `tuned` event. */
  readonly isTuned: boolean;
};

/** A pin that gives way: its string falls by so much a year (a negative number), from a date on. */
export type PlannedSlip = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly centsPerYear: number;
  readonly fromDate: string;
};

/** A part of the block that fails: rate(t) = first + growth·t, t in years since `fromDate`; both negative. */
export type PlannedZone = {
  readonly fromMidi: number;
  readonly toMidi: number;
  readonly firstCentsPerYear: number;
  readonly growthCentsPerYear2: number;
  readonly fromDate: string;
};

/** One string of one survey, wrong by so many cents. As left: the tuner set it so, and it stays so. As found: only the take is wrong. */
export type PlannedFault = {
  readonly on: string;
  readonly stage: SurveyStage;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly cents: number;
};

export type PlannedSettling = {
  readonly restrungOn: string;
  /** Fall in the end, a positive number; wound strings fall half as far. */
  readonly totalCents: number;
  readonly timeConstantYears: number;
};

export type PlannedClimate = {
  readonly meanHumidityPct: number;
  /** Half the way from the driest to the dampest month. */
  readonly swingPct: number;
  /** Standard deviation of the room's day to day weather. */
  readonly dayWeatherPct: number;
  /** Trend of the mean. */
  readonly dryingPctPerYear: number;
  /** Time in which the wood follows the room, as a first-order lag. */
  readonly lagDays: number;
  readonly hygrometerErrorPct: number;
  readonly temperatureC: number;
  readonly temperatureScatterC: number;
  /** Share of the visits at which nobody noted the climate. */
  readonly unnotedShare: number;
};

export type HistoryPlan = {
  readonly compass: Compass;
  readonly bassBridgeTopMidi: number;
  readonly strutsAfterMidi: readonly number[];
  /** Which strings of a note are read. */
  readonly stringsOf: (midi: number) => readonly StringPosition[];
  readonly visits: readonly PlannedVisit[];
  readonly climate: PlannedClimate;
  /** Factor on every string's usual response to humidity; 0: a piano that no weather moves. */
  readonly responseFactor: number;
  /** Standard deviation of single strings' responses about the course of their register, as a share of it. */
  readonly responseScatter: number;
  /** Right strings of plain unisons answer humidity by so much more than the centre ones, left ones by so much less (cents per %RH). */
  readonly unisonSplitCentsPerPct: number;
  readonly temperatureCentsPerC: number;
  readonly settling: PlannedSettling | null;
  /** The whole instrument's own drift. */
  readonly driftCentsPerYear: number;
  /** Standard deviation, from interval to interval, of what each register does beyond all that: a slope along each bridge, a step. */
  readonly registerCents: number;
  /** The same for patches of a dozen notes or so: how a part of the board or a rib moves. */
  readonly patchCents: number;
  /** Standard deviation of one string's own movement over an interval: however short, and what a year adds in variance. */
  readonly strayCents: number;
  readonly strayCentsPerRootYear: number;
  /** A share of all movements that are three times as large. */
  readonly largeStrayShare: number;
  readonly slips: readonly PlannedSlip[];
  readonly zone: PlannedZone | null;
  readonly faults: readonly PlannedFault[];
  readonly tunerScatterCents: number;
  /** Standard deviation of a reading's own noise. */
  readonly readingNoiseCents: (midi: number) => number;
  readonly isUncertaintyStated: boolean;
  readonly missingNoteShare: number;
  /** By date: what every reading of that visit is higher by, as against another pitch standard or a slow clock. */
  readonly levelShiftCents: Readonly<Record<string, number>>;
  readonly otherEvents: readonly HistoryEvent[];
};

/** The centre string behind a felt strip. */
export function centreString(): readonly StringPosition[] {
  return [2];
}

/** One string to F♯1, two to the bass break, three above (common practice on grands; the numbers differ much from maker to maker). */
export function asStrung(bassBridgeTopMidi: number): (midi: number) => readonly StringPosition[] {
  return (midi) => (midi <= 30 ? [1] : midi <= bassBridgeTopMidi ? [1, 2] : [1, 2, 3]);
}

const MEAN_MONTH_DAYS = 30.4375;
const MS_PER_DAY = 86_400_000;

/** So many visits, each with both surveys, so many months apart. @example regularVisits('2020-01-01', 2, 6)[1]?.on // '2020-07-02' */
export function regularVisits(firstOn: string, count: number, everyMonths: number): PlannedVisit[] {
  const first = Date.parse(firstOn);
  if (Number.isNaN(first)) throw new RangeError(`firstOn must be an ISO 8601 calendar date, got ${firstOn}`);
  return Array.from({ length: count }, (_, index) => {
    const time = first + Math.round(index * everyMonths * MEAN_MONTH_DAYS) * MS_PER_DAY;
    return { on: new Date(time).toISOString().slice(0, 10), surveys: 'both' as const, isTuned: true };
  });
}

/**
 * A grand of 88 notes in a heated room, its centre strings surveyed twice a year for six years, nothing wrong with it.
 *
 * Sources, by standing. Trade practice (practitioners' reports, single observers, uncontrolled): the response to humidity (humidityResponses
 * of simulatedStrings.ts), −0.36 cents per °C where everything has come to the same temperature, a lag of 3 to 30 days of the wood behind
 * the air, unisons that humidity splits, the break at E2 to G2, struts near E2 and B4. Repeatability of a reading: this project's own usual
 * figures by register. Invented, in a size that technicians call ordinary: everything else, namely the room's climate (dry in February
 * from heating, damp in August), single strings' scatter (two strings in a hundred two cents out after half a year), the
 * registers' own movement, how well a tuner leaves a string, and missing notes.
 */
export function usualPlan(changes: Partial<HistoryPlan> = {}): HistoryPlan {
  return {
    compass: COMPASS_88,
    bassBridgeTopMidi: 43,
    strutsAfterMidi: [43, 71],
    stringsOf: centreString,
    visits: regularVisits('2015-03-01', 13, 6),
    climate: USUAL_CLIMATE,
    responseFactor: 1,
    responseScatter: 0.12,
    unisonSplitCentsPerPct: 0.15,
    temperatureCentsPerC: -0.36,
    settling: null,
    driftCentsPerYear: -0.5,
    registerCents: 0.6,
    patchCents: 0.15,
    strayCents: 0.4,
    strayCentsPerRootYear: 0.5,
    largeStrayShare: 0.02,
    slips: [],
    zone: null,
    faults: [],
    tunerScatterCents: 0.5,
    readingNoiseCents: usualUncertaintyCents,
    isUncertaintyStated: true,
    missingNoteShare: 0.01,
    levelShiftCents: {},
    otherEvents: [],
    ...changes,
  };
}

/** Invented: a heated room in a northern temperate winter. */
export const USUAL_CLIMATE: PlannedClimate = {
  meanHumidityPct: 45,
  swingPct: 10,
  dayWeatherPct: 4,
  dryingPctPerYear: 0,
  lagDays: 14,
  hygrometerErrorPct: 1.5,
  temperatureC: 20.5,
  temperatureScatterC: 1,
  unnotedShare: 0,
};
