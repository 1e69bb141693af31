/** Ticks along an axis of dates. Times are milliseconds since 1970, UTC. */
import { figureLocale } from '../../piano/formatLanguage.ts';
import { writeDate } from '../../piano/writeDate.ts';

export type TimeScale = {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly time: number; readonly label: string }[];
};

const MS_PER_DAY = 86_400_000;
const MS_PER_YEAR = 365.25 * MS_PER_DAY;
/** Shorter than this the months are named. */
const YEARS_OF_MONTHS = 2.2;
const YEAR_STEPS = [1, 2, 5, 10, 20, 50];
const MONTH_STEPS = [1, 2, 3, 4, 6, 12];

/**
 * From a little before the first date to a little after the last, with ticks at the beginnings of years, or of months where the time is short.
 * @param dates ISO 8601 calendar dates, at least one
 * @throws {RangeError} if there is none, or one is no date
 * @example timeScale(['2016-08-18', '2026-02-11'], 6).ticks.map((tick) => tick.label) // ['2018', '2020', '2022', '2024', '2026']
 */
export function timeScale(dates: readonly string[], mostTicks: number): TimeScale {
  const times = dates.map(timeOf);
  const first = Math.min(...times);
  const last = Math.max(...times);
  if (!Number.isFinite(first) || !Number.isFinite(last)) throw new RangeError(`dates must hold dates, got ${dates[0]}`);
  const margin = Math.max(20 * MS_PER_DAY, 0.03 * (last - first));
  const [low, high] = [first - margin, last + margin];
  const years = (high - low) / MS_PER_YEAR;
  const ticks = years < YEARS_OF_MONTHS ? monthTicks(low, high, mostTicks) : yearTicks(low, high, mostTicks);
  return { low, high, ticks };
}

/** @example timeOf('1970-01-02') // 86400000 */
export function timeOf(date: string): number {
  return Date.parse(`${date.slice(0, 10)}T00:00:00Z`);
}

/** @example dateOf(86400000) // '1970-01-02' */
export function dateOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}

function yearTicks(low: number, high: number, most: number): TimeScale['ticks'] {
  const firstYear = new Date(low).getUTCFullYear() + 1;
  const lastYear = new Date(high).getUTCFullYear();
  const step = YEAR_STEPS.find((candidate) => (lastYear - firstYear) / candidate < most) ?? 100;
  const years = Array.from({ length: lastYear - firstYear + 1 }, (_, index) => firstYear + index);
  return years.filter((year) => year % step === 0).map((year) => ({ time: Date.UTC(year, 0, 1), label: String(year) }));
}

function monthTicks(low: number, high: number, most: number): TimeScale['ticks'] {
  const from = new Date(low);
  const monthCount = (high - low) / (MS_PER_YEAR / 12);
  const step = MONTH_STEPS.find((candidate) => monthCount / candidate <= most) ?? 12;
  const firstMonth = from.getUTCFullYear() * 12 + from.getUTCMonth() + 1;
  const months = Array.from({ length: Math.ceil(monthCount) + 1 }, (_, index) => firstMonth + index);
  return months
    .filter((month) => month % step === 0)
    .map((month) => Date.UTC(Math.floor(month / 12), month % 12, 1))
    .filter((time) => time >= low && time <= high)
    .map((time) => ({ time, label: monthLabel(time) }));
}

function monthLabel(time: number): string {
  return writeDate('month', time, figureLocale());
}
