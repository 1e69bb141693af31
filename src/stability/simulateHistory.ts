/**
 * An invented instrument's history: what its surveys would say, and what is true of it. For tests, for measuring how well the judgement of
 * pins does, and for seeing beforehand what a fault would look like.
 *
 * Model: a string's place is where its tuner left it, plus what season, temperature, settling, drift and slips have done since, plus
 * its own stray movement; a reading is that plus noise. Causes are alike for all strings of a kind, or smooth along a bridge. It is a sketch:
 * no string breaks, no pitch raise pulls back, slips go evenly and not by jerks, and torque is not in it.
 * Source and standing of the sizes: see usualPlan.
 */
import type { SurveyStage } from '../piano/instrument.ts';
import type { HistoryEvent, HistoryReading } from './drift/history.ts';
import type { HistoryPlan, PlannedVisit, SimulationRandom } from './simulation/historyPlan.ts';
import { type ClimateOnDay, climateOn } from './simulation/simulatedClimate.ts';
import {
  type SimulatedString,
  settledCents,
  slippedCents,
  stringsOfPlan,
  yearsSince,
} from './simulation/simulatedStrings.ts';

export type SimulatedHistory = {
  readonly readings: readonly HistoryReading[];
  readonly events: readonly HistoryEvent[];
  readonly truth: HistoryTruth;
};

export type HistoryTruth = {
  readonly strings: readonly (SimulatedString & {
    /** Mean over the time from the first visit to the last; nought for a pin that holds. */
    readonly slipCentsPerYear: number;
  })[];
  /** By date of visit. */
  readonly woodHumidityPct: ReadonlyMap<string, number>;
};

/** Before the first visit the piano was left alone for a year or two. Invented. */
const FIRST_FOUND_CENTS = -5;
const FIRST_FOUND_SCATTER_CENTS = 2.5;
const LARGE_STRAY = 3;

/** @throws {RangeError} if there is no visit, or the visits do not stand in the order of their dates */
export function simulateHistory(plan: HistoryPlan, random: SimulationRandom): SimulatedHistory {
  const dates = plan.visits.map((visit) => visit.on);
  checkDates(dates);
  const strings = stringsOfPlan(plan, random);
  const climate = climateOn(dates, plan.climate, random);
  const standing = strings.map(() => FIRST_FOUND_CENTS + FIRST_FOUND_SCATTER_CENTS * random.normal());
  const readings: HistoryReading[] = [];
  let before: Moment | undefined;
  for (const visit of plan.visits) {
    const now = momentOf(visit.on, climate);
    if (before) move(plan, strings, standing, { before, now }, random);
    if (visit.surveys === 'both' || visit.surveys === 'as-found')
      readings.push(...survey(plan, strings, standing, now, 'as-found', random));
    if (visit.isTuned) tune(plan, strings, standing, visit, random);
    if (visit.surveys === 'both' || visit.surveys === 'as-left')
      readings.push(...survey(plan, strings, standing, now, 'as-left', random));
    before = now;
  }
  return { readings, events: eventsOf(plan), truth: truthOf(plan, strings, dates, climate) };
}

function checkDates(dates: readonly string[]): void {
  if (dates.length === 0) throw new RangeError('visits must hold at least one visit, got none');
  dates.forEach((date, index) => {
    const before = dates[index - 1];
    if (before !== undefined && !(date > before))
      throw new RangeError(`visits must stand in the order of their dates, got ${date} after ${before}`);
  });
}

type Moment = { readonly date: string; readonly climate: ClimateOnDay };

function momentOf(date: string, climate: ReadonlyMap<string, ClimateOnDay>): Moment {
  const onDay = climate.get(date);
  if (!onDay) throw new RangeError(`on must be an ISO 8601 calendar date, got ${date}`);
  return { date, climate: onDay };
}

type Stretch = { readonly before: Moment; readonly now: Moment };

function move(
  plan: HistoryPlan,
  strings: readonly SimulatedString[],
  standing: number[],
  stretch: Stretch,
  random: SimulationRandom,
): void {
  const { before, now } = stretch;
  const years = yearsSince(before.date, now.date);
  const humidityPct = now.climate.woodHumidityPct - before.climate.woodHumidityPct;
  const common =
    plan.driftCentsPerYear * years +
    plan.temperatureCentsPerC * (now.climate.temperatureC - before.climate.temperatureC);
  const register = registerMovement(plan, random);
  const straySize = Math.hypot(plan.strayCents, plan.strayCentsPerRootYear * Math.sqrt(years));
  strings.forEach((string, index) => {
    const isLarge = random.uniform() < plan.largeStrayShare;
    const stray = straySize * (isLarge ? LARGE_STRAY : 1) * random.normal();
    const lasting = (date: string) => slippedCents(plan, string, date) + settledCents(plan, string, date);
    standing[index] =
      (standing[index] ?? 0) +
      common +
      string.responseCentsPerPct * humidityPct +
      register(string.midi) +
      lasting(now.date) -
      lasting(before.date) +
      stray;
  });
}

/** A step between the bridges, a slope along each and patches, drawn anew for each interval. */
function registerMovement(plan: HistoryPlan, random: SimulationRandom): (midi: number) => number {
  const { bassBridgeTopMidi, compass, registerCents } = plan;
  const [step, onBass, onTreble] = [random.normal(), random.normal(), random.normal()];
  const place = (midi: number, low: number, high: number) => (2 * (midi - low)) / Math.max(1, high - low) - 1;
  const patch = patches(plan, random);
  return (midi) => {
    if (midi <= bassBridgeTopMidi)
      return registerCents * (step + onBass * place(midi, compass.lowestMidi, bassBridgeTopMidi)) + patch(midi);
    return registerCents * onTreble * place(midi, bassBridgeTopMidi + 1, compass.highestMidi) + patch(midi);
  };
}

const PATCH_NOTES = 6;

/** Values drawn every PATCH_NOTES notes, and half cosines between them. */
function patches({ compass, patchCents }: HistoryPlan, random: SimulationRandom): (midi: number) => number {
  const count = Math.ceil((compass.highestMidi - compass.lowestMidi) / PATCH_NOTES) + 2;
  const knots = Array.from({ length: count }, () => patchCents * random.normal());
  return (midi) => {
    const at = (midi - compass.lowestMidi) / PATCH_NOTES;
    const left = Math.floor(at);
    const share = 0.5 - 0.5 * Math.cos(Math.PI * (at - left));
    return (1 - share) * (knots[left] ?? 0) + share * (knots[left + 1] ?? 0);
  };
}

function tune(
  plan: HistoryPlan,
  strings: readonly SimulatedString[],
  standing: number[],
  visit: PlannedVisit,
  random: SimulationRandom,
): void {
  strings.forEach((string, index) => {
    standing[index] = plan.tunerScatterCents * random.normal() + faultCents(plan, string, visit.on, 'as-left');
  });
}

function faultCents(plan: HistoryPlan, string: SimulatedString, on: string, stage: SurveyStage): number {
  return plan.faults
    .filter((fault) => fault.on === on && fault.stage === stage)
    .filter((fault) => fault.midi === string.midi && fault.stringPosition === string.stringPosition)
    .reduce((sum, fault) => sum + fault.cents, 0);
}

function survey(
  plan: HistoryPlan,
  strings: readonly SimulatedString[],
  standing: readonly number[],
  { date, climate }: Moment,
  stage: SurveyStage,
  random: SimulationRandom,
): HistoryReading[] {
  const shift = plan.levelShiftCents[date] ?? 0;
  return strings.flatMap((string, index) => {
    const noiseCents = plan.readingNoiseCents(string.midi);
    const noise = noiseCents * random.normal();
    const isMissing = random.uniform() < plan.missingNoteShare;
    if (isMissing) return [];
    const wrongTake = stage === 'as-found' ? faultCents(plan, string, date, stage) : 0;
    return [
      {
        visitedOn: date,
        stage,
        humidityPct: climate.notedHumidityPct,
        temperatureC: climate.notedTemperatureC,
        midi: string.midi,
        stringPosition: string.stringPosition,
        cents: string.targetCents + (standing[index] ?? 0) + noise + wrongTake + shift,
        standardUncertaintyCents: plan.isUncertaintyStated ? Math.max(0.01, noiseCents) : null,
      },
    ];
  });
}

function eventsOf(plan: HistoryPlan): HistoryEvent[] {
  const whole = (happenedOn: string, kind: HistoryEvent['kind']): HistoryEvent => ({
    happenedOn,
    kind,
    fromMidi: null,
    toMidi: null,
  });
  const unseenTunings = plan.visits
    .filter((visit) => visit.isTuned && visit.surveys !== 'both' && visit.surveys !== 'as-left')
    .map((visit) => whole(visit.on, 'tuned'));
  const restrung = plan.settling ? [whole(plan.settling.restrungOn, 'restrung')] : [];
  return [...restrung, ...unseenTunings, ...plan.otherEvents];
}

function truthOf(
  plan: HistoryPlan,
  strings: readonly SimulatedString[],
  dates: readonly string[],
  climate: ReadonlyMap<string, ClimateOnDay>,
): HistoryTruth {
  const [first = '', last = ''] = [dates[0], dates.at(-1)];
  const years = yearsSince(first, last);
  return {
    strings: strings.map((string) => ({
      ...string,
      slipCentsPerYear: years > 0 ? (slippedCents(plan, string, last) - slippedCents(plan, string, first)) / years : 0,
    })),
    woodHumidityPct: new Map([...climate].map(([date, day]) => [date, day.woodHumidityPct])),
  };
}
