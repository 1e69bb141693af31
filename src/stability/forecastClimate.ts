/**
 * A room's humidity over the year, from the days on which somebody noted it.
 *
 * Model: mean + yearly swing (one cosine) + the day's own weather. Where the record does not show the year, an assumed swing stands in:
 * 45 %RH in the mean, ±8 about it, driest in the middle of February, as in a heated room of the northern temperate zone (chosen; a
 * room by the sea, in the south, or with a humidifier is another matter, and the uncertainty is wide enough to say so).
 */
import { yearsBetween } from './changeIntervals.ts';
import { invert } from './drift/ridge.ts';

export type HumidityReading = { readonly visitedOn: string; readonly humidityPct: number };

export type RoomClimate = {
  /** Whether the year is known from the record, or leans on the assumption. */
  readonly basis: 'record' | 'assumption';
  readonly readingCount: number;
  readonly meanPct: number;
  /** Half the way from the driest to the dampest time of the year. */
  readonly swingPct: number;
  readonly swingUncertaintyPct: number;
  /** Standard deviation of single days about the yearly course. */
  readonly dayPct: number;
  /** Expected humidity on a day, and how well the yearly course is known there (without the day's own weather). */
  readonly on: (date: string) => { readonly humidityPct: number; readonly standardUncertaintyPct: number };
  /** Expected change of humidity from one day to another, and how well the yearly course shows it. */
  readonly change: (
    from: string,
    to: string,
  ) => { readonly changePct: number; readonly standardUncertaintyPct: number };
  /** The next driest or dampest time after a day. */
  readonly nextTurn: (after: string) => { readonly on: string; readonly kind: 'driest' | 'dampest' };
};

const ASSUMED_MEAN_PCT = 45;
const ASSUMED_SWING_PCT = 8;
const MEAN_DEVIATION_PCT = 12;
const SWING_DEVIATION_PCT = 6;
/** Share of the year at its driest: the middle of February. */
const DRIEST_YEAR_SHARE = 0.125;
/** Standing: chosen, the usual scatter of single readings about a season. */
const USUAL_DAY_PCT = 4;
const LEAST_DAY_PCT = 2;
/** A year is shown by at least this many readings in at least three of its quarters. */
const LEAST_READINGS = 5;
const LEAST_QUARTERS = 3;
const NEW_YEAR = '2000-01-01';

export function roomClimate(readings: readonly HumidityReading[]): RoomClimate {
  const first = fitYear(readings, USUAL_DAY_PCT);
  const dayPct = dayWeather(readings, first.mean);
  const { mean, covariance } = fitYear(readings, dayPct);
  const [meanPct = 0, cosine = 0, sine = 0] = mean;
  const swingPct = Math.hypot(cosine, sine);
  const swingVariance = quadratic([0, cosine / Math.max(swingPct, 1e-9), sine / Math.max(swingPct, 1e-9)], covariance);
  return {
    basis: showsTheYear(readings) ? 'record' : 'assumption',
    readingCount: readings.length,
    meanPct,
    swingPct,
    swingUncertaintyPct: Math.sqrt(swingVariance),
    dayPct,
    on: (date) => {
      const row = rowOf(date);
      const humidityPct = row.reduce((sum, value, j) => sum + value * (mean[j] ?? 0), 0);
      return { humidityPct, standardUncertaintyPct: Math.sqrt(quadratic(row, covariance)) };
    },
    change: (from, to) => {
      const [before, after] = [rowOf(from), rowOf(to)];
      const row = after.map((value, j) => value - (before[j] ?? 0));
      const changePct = row.reduce((sum, value, j) => sum + value * (mean[j] ?? 0), 0);
      return { changePct, standardUncertaintyPct: Math.sqrt(quadratic(row, covariance)) };
    },
    nextTurn: (after) => nextTurn(after, cosine, sine),
  };
}

/** 1, and the cosine and sine of the time of the year. */
function rowOf(date: string): number[] {
  const angle = 2 * Math.PI * yearsBetween(NEW_YEAR, date);
  return [1, Math.cos(angle), Math.sin(angle)];
}

/** Least squares with the assumption as prior (a normal linear model: the posterior's mean and covariance). */
function fitYear(readings: readonly HumidityReading[], dayPct: number): { mean: number[]; covariance: number[][] } {
  const driest = 2 * Math.PI * DRIEST_YEAR_SHARE;
  const prior = [ASSUMED_MEAN_PCT, -ASSUMED_SWING_PCT * Math.cos(driest), -ASSUMED_SWING_PCT * Math.sin(driest)];
  const weights = [MEAN_DEVIATION_PCT, SWING_DEVIATION_PCT, SWING_DEVIATION_PCT].map((deviation) => deviation ** -2);
  const rows = readings.map(({ visitedOn, humidityPct }) => ({ row: rowOf(visitedOn), humidityPct }));
  const information = prior.map((_, i) =>
    prior.map((__, j) => {
      const own = i === j ? (weights[i] ?? 0) : 0;
      return rows.reduce((sum, { row }) => sum + ((row[i] ?? 0) * (row[j] ?? 0)) / dayPct ** 2, own);
    }),
  );
  const right = prior.map((value, i) =>
    rows.reduce((sum, one) => sum + ((one.row[i] ?? 0) * one.humidityPct) / dayPct ** 2, value * (weights[i] ?? 0)),
  );
  const covariance = invert(information);
  return { covariance, mean: covariance.map((line) => line.reduce((sum, c, j) => sum + c * (right[j] ?? 0), 0)) };
}

function quadratic(row: readonly number[], matrix: readonly (readonly number[])[]): number {
  return row.reduce(
    (sum, value, i) => sum + value * row.reduce((inner, other, j) => inner + other * (matrix[i]?.[j] ?? 0), 0),
    0,
  );
}

/** Of the readings about the course; three freedoms are used up by it, and the usual figure counts for three readings. */
function dayWeather(readings: readonly HumidityReading[], mean: readonly number[]): number {
  const squares = readings.reduce((sum, { visitedOn, humidityPct }) => {
    const expected = rowOf(visitedOn).reduce((inner, value, j) => inner + value * (mean[j] ?? 0), 0);
    return sum + (humidityPct - expected) ** 2;
  }, 0);
  const freedom = Math.max(0, readings.length - 3);
  return Math.max(LEAST_DAY_PCT, Math.sqrt((squares + 3 * USUAL_DAY_PCT ** 2) / (freedom + 3)));
}

function showsTheYear(readings: readonly HumidityReading[]): boolean {
  const quarters = new Set(readings.map(({ visitedOn }) => Math.floor((Number(visitedOn.slice(5, 7)) - 1) / 3)));
  return readings.length >= LEAST_READINGS && quarters.size >= LEAST_QUARTERS;
}

const DAYS_PER_YEAR = 365.25;
/** A turn nearer than this is the season that it is now. */
const PRESENT_SEASON_DAYS = 30;

function nextTurn(after: string, cosine: number, sine: number): { on: string; kind: 'driest' | 'dampest' } {
  const dampest = Math.atan2(sine, cosine) / (2 * Math.PI);
  const now = yearsBetween(NEW_YEAR, after);
  const halves = Math.floor(2 * (now + PRESENT_SEASON_DAYS / DAYS_PER_YEAR - dampest)) + 1;
  const days = Math.round((dampest + halves / 2 - now) * DAYS_PER_YEAR);
  return { on: addDays(after, days), kind: halves % 2 === 0 ? 'dampest' : 'driest' };
}

const MS_PER_DAY = 86_400_000;

/** @example addDays('2024-02-28', 2) // '2024-03-01' */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}
