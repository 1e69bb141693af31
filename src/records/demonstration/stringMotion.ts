/** What the strings of an invented piano do between two visits, in cents, and how the room's humidity goes through the year. */
import type { InstrumentPlan } from './plans.ts';
import type { SeededNumbers } from './seededNumbers.ts';

/**
 * How far a string moves with the room's humidity, in cents per %RH, on an average piano: 0.8 at A4, doubling for each octave
 * down to the break, a third of that and less for the wound strings, fading to almost nothing at the top.
 * Standing: practitioners' reports, single observers; good enough to invent with.
 */
function humidityResponseCentsPerPct(midi: number, bassBridgeTopMidi: number): number {
  if (midi <= bassBridgeTopMidi) return 0.1 + (0.6 * (midi - 21)) / (bassBridgeTopMidi - 21);
  if (midi <= 69) return withCeiling(0.8 * 2 ** ((69 - midi) / 12), HIGHEST_RESPONSE_CENTS_PER_PCT);
  return 0.8 * 2 ** ((69 - midi) / 14) * (1 - (midi - 69) / 60);
}

/** Lowest plain strings do not double for ever. Chosen. */
const HIGHEST_RESPONSE_CENTS_PER_PCT = 2.2;

/** Follows the value while it is small and bends smoothly towards the ceiling. */
function withCeiling(value: number, ceiling: number): number {
  return value / (1 + (value / ceiling) ** 3) ** (1 / 3);
}

const DRIEST_DAY_OF_YEAR = 40;

/** Dry in February from the heating, damp in August (the northern temperate year). @param share of the year gone by, 0 to 1 */
export function seasonHumidityPct(plan: InstrumentPlan, share: number): number {
  return plan.meanHumidityPct - plan.humiditySwingPct * Math.cos(2 * Math.PI * (share - DRIEST_DAY_OF_YEAR / 365));
}

export type Stretch = {
  /** Since the first visit. */
  readonly fromYears: number;
  readonly toYears: number;
  readonly humidityChangePct: number;
};

/**
 * Unexplained scatter of one string over one interval, in cents: its standard deviation however short, and what a year adds in
 * variance. Standing: chosen, so that a couple of strings in a hundred are two cents out after half a year.
 */
const STEADY_SCATTER_CENTS = 0.45;
const YEARLY_SCATTER_CENTS = 0.5;

/** How far one string moves over a stretch of time, negative for flatter. */
export function stringMotionCents(
  plan: InstrumentPlan,
  midi: number,
  stretch: Stretch,
  numbers: SeededNumbers,
): number {
  const years = stretch.toYears - stretch.fromYears;
  const breakMidi = plan.instrument.bassBridgeTopMidi ?? plan.instrument.compass.lowestMidi;
  const season = plan.humidityShare * humidityResponseCentsPerPct(midi, breakMidi) * stretch.humidityChangePct;
  const scatter = numbers.normal(Math.hypot(STEADY_SCATTER_CENTS, YEARLY_SCATTER_CENTS * Math.sqrt(years)));
  return (
    season +
    settlingCents(plan, midi, stretch) +
    zoneCents(plan, midi, stretch) -
    plan.fallCentsPerYear * years +
    scatter
  );
}

/** Wound strings settle about half as far as plain ones. Standing: chosen. */
const WOUND_SETTLING_SHARE = 0.5;

function settlingCents(plan: InstrumentPlan, midi: number, stretch: Stretch): number {
  if (!plan.settling) return 0;
  const { totalCents, timeConstantYears } = plan.settling;
  const left = (years: number): number => totalCents * Math.exp(-years / timeConstantYears);
  const share = midi <= (plan.instrument.bassBridgeTopMidi ?? 0) ? WOUND_SETTLING_SHARE : 1;
  return share * (left(stretch.toYears) - left(stretch.fromYears));
}

/** The rate grows evenly from the first visit to the last, so the slip is the rate's integral; the zone's edges slip less. */
function zoneCents(plan: InstrumentPlan, midi: number, stretch: Stretch): number {
  const { zone, visitYears } = plan;
  if (!zone || midi < zone.fromMidi || midi > zone.toMidi) return 0;
  const lastYear = visitYears.at(-1) ?? 1;
  const growth = (zone.lastCentsPerYear - zone.firstCentsPerYear) / lastYear;
  const slip = (years: number): number => zone.firstCentsPerYear * years + (growth * years ** 2) / 2;
  const middle = (zone.fromMidi + zone.toMidi) / 2;
  const halfWidth = (zone.toMidi - zone.fromMidi + 1) / 2;
  const depth = 1.15 - 0.45 * ((midi - middle) / halfWidth) ** 2;
  return -depth * (slip(stretch.toYears) - slip(stretch.fromYears));
}
