/** Dates along a chart: where a day stands, and which years are written below. */

const MS_PER_DAY = 86_400_000;

export type TimeAxis = {
  readonly at: (isoDate: string) => number;
  /** The beginnings of years, or of quarters where the chart is short, with what is written there. */
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
};

/** Shorter than this and quarters are written. */
const SHORT_YEARS = 2.5;

export type AxisRoom = {
  readonly left: number;
  readonly right: number;
  /** More years than this and only every second or fifth is written. */
  readonly mostLabels: number;
};

/** @param dates at least one, ISO 8601 */
export function timeAxis(dates: readonly string[], { left, right, mostLabels }: AxisRoom, language: string): TimeAxis {
  const days = dates.map(dayOf);
  const first = Math.min(...days);
  const last = Math.max(first + 30, ...days);
  const at = (day: number) => left + ((right - left) * (day - first)) / (last - first);
  const years = (last - first) / 365.25;
  const starts = years < SHORT_YEARS ? quarterStarts(first, last, language) : yearStarts(first, last, mostLabels);
  return { at: (date) => at(dayOf(date)), ticks: starts.map(({ day, label }) => ({ x: at(day), label })) };
}

function yearStarts(first: number, last: number, mostLabels: number) {
  const years = (last - first) / 365.25;
  const step = years <= mostLabels ? 1 : years <= 2 * mostLabels ? 2 : 5;
  const range = yearsWithin(first, last);
  return range
    .filter((year) => year % step === 0)
    .map((year) => ({ day: dayOf(`${year}-01-01`), label: String(year) }));
}

function quarterStarts(first: number, last: number, language: string) {
  const month = new Intl.DateTimeFormat(language, { month: 'short', timeZone: 'UTC' });
  return [yearOf(first), ...yearsWithin(first, last)]
    .flatMap((year) => [`${year}-01-01`, `${year}-04-01`, `${year}-07-01`, `${year}-10-01`])
    .map((date) => ({
      day: dayOf(date),
      label: date.endsWith('-01-01') ? date.slice(0, 4) : month.format(new Date(`${date}T00:00:00Z`)),
    }))
    .filter(({ day }) => day >= first && day <= last);
}

/** Years that begin within the stretch. */
function yearsWithin(first: number, last: number): number[] {
  const from = yearOf(first) + 1;
  return Array.from({ length: Math.max(0, yearOf(last) - from + 1) }, (_, index) => from + index);
}

function yearOf(day: number): number {
  return new Date(day * MS_PER_DAY).getUTCFullYear();
}

function dayOf(isoDate: string): number {
  return Date.parse(`${isoDate.slice(0, 10)}T00:00:00Z`) / MS_PER_DAY;
}
