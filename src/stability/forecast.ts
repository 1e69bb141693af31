/**
 * How far an instrument will move from where it was left, and when it is due again.
 *
 * movement of string i after t years = h_i·(humidity then − humidity as left) + c·t + s_i·t + stray: season, the whole instrument's own course
 * (settling that remains included, at its present rate, so that a fresh restringing reads a little too far), the pin's slip, and what single
 * strings do by themselves, whose variance grows evenly with time. The piano counts as out of tune when the root mean square of all
 * strings' departures passes a limit. The lower and upper course take in two thirds of what is not known of humidity and common course
 * (16 % and 84 % of their joint distribution, on a grid of normal quantiles).
 * Not valid across a pitch raise, a move to another room, or work on the block.
 */

import { medianOf } from '../piano/robustStatistics.ts';
import { yearsBetween } from './changeIntervals.ts';
import { addDays, type RoomClimate } from './forecastClimate.ts';

export type ForecastString = {
  readonly centsPerPct: number;
  readonly responseUncertainty: number;
  /** Nought or below. */
  readonly slipCentsPerYear: number;
  readonly slipUncertainty: number;
};

export type ForecastRequest = {
  readonly strings: readonly ForecastString[];
  readonly leftOn: string;
  /** Null where nobody noted it: the season's usual one then. */
  readonly leftHumidityPct: number | null;
  readonly climate: RoomClimate;
  readonly common: {
    readonly centsPerYear: number;
    readonly standardUncertainty: number;
    /** From interval to interval, beyond its steady course. */
    readonly scatterCents: number;
  };
  /** Standard deviation of what a string does by itself in a year. */
  readonly strayCentsPerRootYear: number;
  /** Root mean square of the strings' departures from where they were left. */
  readonly limitCents: number;
};

export type ForecastPoint = {
  readonly on: string;
  readonly years: number;
  readonly humidityPct: number;
  readonly humidityUncertaintyPct: number;
  /** Median over the strings. */
  readonly medianCents: number;
  readonly medianUncertaintyCents: number;
  readonly rmsCents: { readonly low: number; readonly expected: number; readonly high: number };
};

export type Forecast = {
  /** Month by month from the day after which nothing is known, for three years. */
  readonly points: readonly ForecastPoint[];
  /** When the limit is passed; null: not within three years. */
  readonly due: {
    readonly earliestOn: string | null;
    readonly expectedOn: string | null;
    readonly latestOn: string | null;
  };
};

const MONTHS = 36;
const DAYS_PER_MONTH = 30.4375;
/**
 * The wood follows the room in weeks, so that one day's reading counts only in part for where the strings stood. Standing: chosen, for a
 * lag of a fortnight and weather that changes within days.
 */
const DAY_COUNTS = 0.5;

/** @throws {RangeError} if there is no string */
export function forecastOf(request: ForecastRequest): Forecast {
  if (request.strings.length === 0) throw new RangeError('strings must hold at least one string, got none');
  const dates = Array.from({ length: MONTHS + 1 }, (_, month) =>
    addDays(request.leftOn, Math.round(month * DAYS_PER_MONTH)),
  );
  const points = dates.map((date) => forecastOn(date, request));
  const due = (rms: (point: ForecastPoint) => number) => crossing(points, rms, request.limitCents);
  return {
    points,
    due: {
      earliestOn: due(({ rmsCents }) => rmsCents.high),
      expectedOn: due(({ rmsCents }) => rmsCents.expected),
      latestOn: due(({ rmsCents }) => rmsCents.low),
    },
  };
}

/** The expected state on one day after the instrument was left. */
export function forecastOn(date: string, request: ForecastRequest): ForecastPoint {
  const { strings, climate, common, leftOn } = request;
  const years = Math.max(0, yearsBetween(leftOn, date));
  const humidity = humidityChange(date, request);
  const drift = {
    cents: common.centsPerYear * years,
    sigma: Math.hypot(common.standardUncertainty * years, common.scatterCents * Math.min(1, Math.sqrt(2 * years))),
  };
  const move = strings.map(
    (string) => string.centsPerPct * humidity.pct + drift.cents + string.slipCentsPerYear * years,
  );
  const medianResponse = medianOf(strings.map((string) => string.centsPerPct));
  const { humidityPct, standardUncertaintyPct } = climate.on(date);
  return {
    on: date,
    years,
    humidityPct,
    humidityUncertaintyPct: Math.hypot(standardUncertaintyPct, DAY_COUNTS * climate.dayPct),
    medianCents: medianOf(move),
    medianUncertaintyCents: Math.hypot(medianResponse * humidity.sigma, drift.sigma),
    rmsCents: rmsCourse(request, years, humidity, drift),
  };
}

type Uncertain = { readonly sigma: number };

/** Change of the wood's humidity since the instrument was left, %RH. */
function humidityChange(
  date: string,
  { climate, leftOn, leftHumidityPct }: ForecastRequest,
): Uncertain & { pct: number } {
  if (date === leftOn) return { pct: 0, sigma: 0 };
  const { changePct, standardUncertaintyPct } = climate.change(leftOn, date);
  const off = leftHumidityPct === null ? 0 : leftHumidityPct - climate.on(leftOn).humidityPct;
  const leftSigma = leftHumidityPct === null ? climate.dayPct : DAY_COUNTS * climate.dayPct;
  return {
    pct: changePct - DAY_COUNTS * off,
    sigma: Math.hypot(leftSigma, DAY_COUNTS * climate.dayPct, standardUncertaintyPct),
  };
}

/** So many quantiles of a standard normal, each standing for an equal share. */
const QUANTILES = [-1.83, -1.28, -0.97, -0.73, -0.52, -0.34, -0.17, 0, 0.17, 0.34, 0.52, 0.73, 0.97, 1.28, 1.83];

function rmsCourse(
  request: ForecastRequest,
  years: number,
  humidity: Uncertain & { readonly pct: number },
  drift: Uncertain & { readonly cents: number },
): ForecastPoint['rmsCents'] {
  const squareOf = meanSquareOf(request.strings);
  const stray = request.strayCentsPerRootYear ** 2 * years;
  const sizes = QUANTILES.flatMap((byHumidity) =>
    QUANTILES.map((byDrift) => {
      const pct = humidity.pct + byHumidity * humidity.sigma;
      const cents = drift.cents + byDrift * drift.sigma;
      return Math.sqrt(squareOf({ pct, cents, years }) + stray);
    }),
  ).sort((a, b) => a - b);
  const at = (share: number) => sizes[Math.round(share * (sizes.length - 1))] ?? 0;
  return { low: at(0.16), expected: at(0.5), high: at(0.84) };
}

type Moved = { readonly pct: number; readonly cents: number; readonly years: number };

/**
 * Mean square of the strings' departures, h·pct + cents + s·years with what is not known of h and s. A quadratic form: its six
 * coefficients are summed over the strings once, not anew for each of the hundreds of moves that are asked for.
 */
function meanSquareOf(strings: readonly ForecastString[]): (moved: Moved) => number {
  const response = meanOf(strings.map((string) => string.centsPerPct));
  const slip = meanOf(strings.map((string) => string.slipCentsPerYear));
  const both = meanOf(strings.map((string) => string.centsPerPct * string.slipCentsPerYear));
  const responseSquare = meanOf(strings.map((string) => string.centsPerPct ** 2 + string.responseUncertainty ** 2));
  const slipSquare = meanOf(strings.map((string) => string.slipCentsPerYear ** 2 + string.slipUncertainty ** 2));
  return ({ pct, cents, years }) =>
    responseSquare * pct ** 2 +
    slipSquare * years ** 2 +
    cents ** 2 +
    2 * (response * pct * cents + both * pct * years + slip * cents * years);
}

/** The first day on which a course passes the limit, by a straight line between two months; null where it stays below. */
function crossing(
  points: readonly ForecastPoint[],
  rms: (point: ForecastPoint) => number,
  limitCents: number,
): string | null {
  for (const [index, point] of points.entries()) {
    if (rms(point) < limitCents) continue;
    const before = points[index - 1];
    if (!before) return point.on;
    const share = (limitCents - rms(before)) / (rms(point) - rms(before));
    const days = (point.years - before.years) * 365.25;
    return addDays(before.on, Math.round(share * days));
  }
  return null;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
