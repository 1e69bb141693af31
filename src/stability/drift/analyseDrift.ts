/** Years of readings to causes and a verdict: season, settling, slipping pins, failing zones, single wrong readings. */
import { findBassBreak } from './bassBreak.ts';
import type { ChangeInterval } from './changeRows.ts';
import { changeTable, surveysOf } from './changeTable.ts';
import { learnTails } from './changeTails.ts';
import { type DriftDetail, driftDetail, NO_DETAIL } from './driftDetail.ts';
import type { DriftInstrument, HistoryEvent, HistoryReading } from './history.ts';
import type { JudgedPin } from './judgedPin.ts';
import { findOutliers, type Outlier } from './outliers.ts';
import { lessCourse, ownHistories, seenHistory } from './ownChanges.ts';
import { repetition } from './repetition.ts';
import { fitSettling, type Settling } from './settling.ts';
import { shapesOf } from './shapes.ts';
import { fitSlips, type Slip, type SlipFit } from './slipPosterior.ts';
import { median } from './statistics.ts';
import { seenChanges } from './unreadTunings.ts';
import { judgeBlock, type Verdict } from './verdict.ts';
import { fitWeather, type WeatherFit } from './weatherModel.ts';
import { findZones, type Zone } from './zoneScan.ts';

export type HumidityResponse = {
  readonly midi: number;
  readonly centsPerPct: number;
  readonly standardUncertainty: number;
};

export type Drift = {
  readonly intervals: readonly (ChangeInterval & { readonly medianCents: number | null })[];
  readonly humidity: readonly HumidityResponse[];
  readonly settling: Settling | null;
  readonly pins: readonly JudgedPin[];
  readonly zones: readonly Zone[];
  readonly outliers: readonly Outlier[];
  readonly verdict: Verdict;
  /** The workings, for charts. */
  readonly detail: DriftDetail;
};

export type DriftRequest = {
  readonly readings: readonly HistoryReading[];
  readonly events: readonly HistoryEvent[];
  readonly instrument: DriftInstrument;
  /** A slip that matters: 1 cent a year by default, which an owner hears after some five years. */
  readonly thresholdCentsPerYear: number;
  /** Standard normal numbers from a seed, for the zones' chance level. */
  readonly random: () => number;
};

/** A pin is flagged from this probability on. In invented histories three of a hundred pins so flagged do not slip. */
const FLAG_PROBABILITY = 0.6;
/** Where nobody read the humidity, the season is only inferred: fewer are found, and no more wrongly. */
const UNSEEN_FLAG_PROBABILITY = 0.9;
/** Slower than this no pin is flagged, however sure. */
const LEAST_SLIP = 0.4;
/** Prior probability of slipping inside a failing zone. */
const ZONE_PRIOR = 0.8;

export function analyseDrift(request: DriftRequest): Drift {
  const table = changeTable(request.readings, request.events);
  const surveys = surveysOf(request.readings);
  const { strings, intervals, changes } = table;
  const seen = { ...table, changes: seenChanges(changes, intervals) };
  const bassTop = request.instrument.bassBridgeTopMidi ?? findBassBreak(seen);
  if (strings.length === 0) return nothing(request, intervals);
  const weather = fitWeather(strings, intervals, changes, bassTop);
  // A room that dries out over the years moves strings steadily, each as it answers humidity: that is no slip either.
  const shapes = [...shapesOf(strings, bassTop), weather.responses];
  const histories = ownHistories(table, weather);
  const seenHistories = histories.map((history) => seenHistory(history, intervals));
  const tails = learnTails(seenHistories);
  const slipsWith = (prior?: Float64Array): SlipFit =>
    fitSlips({
      histories,
      tails,
      shapes,
      shapeDeviations: steadyDeviations(weather, intervals),
      ...(prior ? { prior } : {}),
    });
  let fit = slipsWith();
  const zones = findZones({
    strings,
    intervals,
    histories: seenHistories,
    seasons: weather.seasons,
    shapes,
    shapeDeviations: steadyDeviations(weather, intervals),
    random: request.random,
  });
  if (zones.length > 0) fit = slipsWith(zonePrior(strings, zones));
  const repeats = histories.map((history, i) => repetition(lessCourse(history, fit.course[i]!)));
  const judged = strings.map((string, i) => ({ ...string, slip: tempered(fit.slips[i]!, repeats[i]!) }));
  const pins = flag(judged, weather.isHumidityKnown ? FLAG_PROBABILITY : UNSEEN_FLAG_PROBABILITY);
  return {
    intervals: withMedians(intervals, seen.changes),
    humidity: responsesByNote(strings, weather),
    settling: fitSettling(intervals, weather.commonCents, request.events),
    pins,
    zones,
    outliers: findOutliers(strings, intervals, changes, weather.residuals, weather.sigmas, surveys),
    verdict: judgeBlock({
      pins,
      zones,
      intervals,
      thresholdCentsPerYear: request.thresholdCentsPerYear,
      isHumidityKnown: weather.isHumidityKnown,
    }),
    detail: driftDetail(table, weather, fit.course),
  };
}

/** A slip that does not repeat itself is none, however large: it was moved once, or read wrongly. */
const LEAST_REPETITION = 2;

function tempered(slip: Slip, repeatedSigmas: number): Slip {
  if (slip.probability === null || repeatedSigmas >= LEAST_REPETITION) return slip;
  return { ...slip, probability: Math.min(slip.probability, ONCE_PROBABILITY) };
}

/** What is left to a string that went flat once. */
const ONCE_PROBABILITY = 0.3;

function nothing(request: DriftRequest, intervals: readonly ChangeInterval[]): Drift {
  const thresholdCentsPerYear = request.thresholdCentsPerYear;
  return {
    intervals: withMedians(intervals, []),
    humidity: [],
    settling: null,
    pins: [],
    zones: [],
    outliers: [],
    verdict: judgeBlock({ pins: [], zones: [], intervals, thresholdCentsPerYear, isHumidityKnown: false }),
    detail: NO_DETAIL,
  };
}

/**
 * What a bridge may do steadily as a whole, in cents a year, by shape: step, slopes, bend and double bend along the treble. Crown,
 * settling, a drying room: no pin's doing. The finer the shape, the less of it.
 */
const WHOLE_BRIDGE_RATES = [1.5, 1, 1, 0.6, 0.4];

/** How much a room's real moisture may drift beyond what hygrometers on single days say, %RH a year. */
const DRYING_PCT_PER_YEAR = 2;

/** Where nobody read the humidity, a season's trend may hide among a bridge's own. */
const UNSEEN_SEASON = 1.7;

/** How large the shapes' steady part gets when they come and go at random: their deviation over the root of Σ years². */
function steadyDeviations(weather: WeatherFit, intervals: readonly ChangeInterval[]): number[] {
  const yearsSquared = intervals.reduce((sum, interval) => sum + (interval.hasBaseline ? interval.years ** 2 : 0), 0);
  const bridges = weather.shapeDeviations.map((deviation, j) =>
    Math.hypot(
      (weather.isHumidityKnown ? 1 : UNSEEN_SEASON) * WHOLE_BRIDGE_RATES[j]!,
      (0.5 * deviation) / Math.sqrt(Math.max(yearsSquared, 1e-6)),
    ),
  );
  return [...bridges, DRYING_PCT_PER_YEAR];
}

function zonePrior(strings: readonly { midi: number }[], zones: readonly Zone[]): Float64Array {
  return Float64Array.from(strings, ({ midi }) =>
    zones.some((zone) => midi >= zone.fromMidi && midi <= zone.toMidi) ? ZONE_PRIOR : 0,
  );
}

function flag(pins: readonly Omit<JudgedPin, 'isFlagged'>[], leastProbability: number): JudgedPin[] {
  return pins.map((pin) => ({
    ...pin,
    isFlagged: (pin.slip.probability ?? 0) >= leastProbability && (pin.slip.centsPerYear ?? 0) < -LEAST_SLIP,
  }));
}

function withMedians(
  intervals: readonly ChangeInterval[],
  changes: readonly { intervalIndex: number; cents: number }[],
) {
  const byInterval: number[][] = intervals.map(() => []);
  for (const { intervalIndex, cents } of changes) byInterval[intervalIndex]!.push(cents);
  return intervals.map((interval, k) => {
    const cents = byInterval[k]!;
    return { ...interval, medianCents: cents.length > 0 ? median(cents) : null };
  });
}

/** One figure a note: its strings' mean. Empty where humidity was not read. */
function responsesByNote(strings: readonly { midi: number }[], weather: WeatherFit): HumidityResponse[] {
  if (!weather.isHumidityKnown) return [];
  const midis = [...new Set(strings.map((string) => string.midi))].sort((a, b) => a - b);
  return midis.map((midi) => {
    const own = strings.map((_, i) => i).filter((i) => strings[i]!.midi === midi);
    const mean = own.reduce((sum, i) => sum + weather.responses[i]!, 0) / own.length;
    const variance = own.reduce((sum, i) => sum + weather.responseUncertainties[i]! ** 2, 0) / own.length ** 2;
    return { midi, centsPerPct: mean, standardUncertainty: Math.sqrt(variance) };
  });
}
