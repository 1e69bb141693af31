/** The strings of an invented instrument: how each answers the weather, settles and slips, and where it stands. */
import { notesOf } from '../../piano/compass.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { yearsBetween } from '../changeIntervals.ts';
import type { HistoryPlan, PlannedZone, SimulationRandom } from './historyPlan.ts';

export type SimulatedString = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly responseCentsPerPct: number;
  /** Share of the settling that this string takes part in. */
  readonly settlingShare: number;
  /** Share of the zone's rate; 0 outside it. */
  readonly zoneShare: number;
  /** Where a tuner would put it, against equal temperament. */
  readonly targetCents: number;
};

/**
 * Cents per %RH on an average piano: 0.8 at A4, doubling for each octave down to the break with a ceiling, from 0.1 to 0.7 for wound
 * strings, fading towards the top. Source: practitioners' records (trade practice; single observers); the ceiling and the fading are invented.
 */
function averageResponse(midi: number, bassBridgeTopMidi: number): number {
  if (midi <= bassBridgeTopMidi) return 0.1 + 0.6 * Math.max(0, (midi - 21) / Math.max(1, bassBridgeTopMidi - 21));
  if (midi > 69) return 0.8 * 2 ** ((69 - midi) / 14) * Math.max(0, 1 - (midi - 69) / 60);
  const doubling = 0.8 * 2 ** ((69 - midi) / 12);
  return doubling / (1 + (doubling / 2.2) ** 3) ** (1 / 3);
}

/** Wound strings settle about half as far as plain ones, and no two alike. Invented. */
const WOUND_SETTLING_SHARE = 0.5;
const SETTLING_SCATTER = 0.1;
const ZONE_SCATTER = 0.15;

export function stringsOfPlan(plan: HistoryPlan, random: SimulationRandom): SimulatedString[] {
  return notesOf(plan.compass).flatMap((midi) =>
    plan.stringsOf(midi).map((stringPosition) => {
      const isWound = midi <= plan.bassBridgeTopMidi;
      const split = isWound || stringPosition === 0 ? 0 : plan.unisonSplitCentsPerPct * (stringPosition - 2);
      const usual = averageResponse(midi, plan.bassBridgeTopMidi) + split;
      const isInZone = plan.zone !== null && midi >= plan.zone.fromMidi && midi <= plan.zone.toMidi;
      const zoneShare = 1 + ZONE_SCATTER * random.normal();
      return {
        midi,
        stringPosition,
        responseCentsPerPct: plan.responseFactor * usual * (1 + plan.responseScatter * random.normal()),
        settlingShare: (isWound ? WOUND_SETTLING_SHARE : 1) * (1 + SETTLING_SCATTER * random.normal()),
        zoneShare: isInZone ? zoneShare : 0,
        targetCents: stretchCents(midi),
      };
    }),
  );
}

/** Octaves are stretched for inharmonicity: some 20 cents flat at the bottom, 25 sharp at the top. Invented, in the usual size. */
function stretchCents(midi: number): number {
  const octavesUp = (midi - 69) / 12;
  return midi >= 69 ? 2.4 * octavesUp ** 2 : -1.25 * octavesUp ** 2;
}

/** What a string's pin and the block have let go by a date, in cents: nought or negative. */
export function slippedCents(plan: HistoryPlan, string: SimulatedString, date: string): number {
  const own = plan.slips
    .filter((slip) => slip.midi === string.midi && slip.stringPosition === string.stringPosition)
    .reduce((sum, slip) => sum + slip.centsPerYear * yearsSince(slip.fromDate, date), 0);
  return own + (plan.zone ? string.zoneShare * zoneCents(plan.zone, date) : 0);
}

/** The integral of first + growth·t. */
function zoneCents(zone: PlannedZone, date: string): number {
  const years = yearsSince(zone.fromDate, date);
  return zone.firstCentsPerYear * years + (zone.growthCentsPerYear2 * years ** 2) / 2;
}

export function settledCents({ settling }: HistoryPlan, string: SimulatedString, date: string): number {
  if (!settling) return 0;
  const years = yearsSince(settling.restrungOn, date);
  return -string.settlingShare * settling.totalCents * (1 - Math.exp(-years / settling.timeConstantYears));
}

export function yearsSince(fromDate: string, date: string): number {
  return Math.max(0, yearsBetween(fromDate, date));
}
