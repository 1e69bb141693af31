/**
 * Music wire by number. Two series share their numbers and not their sizes, so a number alone is no diameter.
 *
 * Inch series: thousandths of an inch = 2·number + 5 for numbers 12 to 23, half numbers between them (trade rule); 24 to 26 step
 * by 0.004 in. Source: public tables of the music wire gauge, which agree with each other; where they differ (a trade list has
 * 0.053 in for number 24) the wire gauge table is taken. Metric series: 0.125 mm + 0.05 mm·number for 12 to 22, 1.3, 1.4 and 1.5 mm
 * for 23 to 25. Source: trade lists. Standing of both: secondary. Old wire may measure 0.01 to 0.025 mm under its number (a
 * practitioner's report): measure it.
 */
export type GaugeSeries = 'inch' | 'metric';

export type WireGauge = {
  readonly series: GaugeSeries;
  /** 13.5 is number 13½. */
  readonly gaugeNumber: number;
  readonly diameterMm: number;
};

/** Definition (international inch, 1959). */
const MM_PER_INCH = 25.4;

export function inchesToMm(lengthIn: number): number {
  return lengthIn * MM_PER_INCH;
}

export function mmToInches(lengthMm: number): number {
  return lengthMm / MM_PER_INCH;
}

const INCH_THICK: readonly (readonly [number: number, inches: number])[] = [
  [24, 0.055],
  [25, 0.059],
  [26, 0.063],
];
const METRIC_THICK: readonly (readonly [number: number, mm: number])[] = [
  [23, 1.3],
  [24, 1.4],
  [25, 1.5],
];

const INCH_GAUGES = [
  ...halfNumbers(12, 23).map((number) => [number, inchesToMm((2 * number + 5) / 1000)] as const),
  ...INCH_THICK.map(([number, inches]) => [number, inchesToMm(inches)] as const),
].map(([gaugeNumber, mm]): WireGauge => ({ series: 'inch', gaugeNumber, diameterMm: rounded(mm, 4) }));

const METRIC_GAUGES = [
  ...halfNumbers(12, 22).map((number) => [number, 0.125 + 0.05 * number] as const),
  ...METRIC_THICK,
].map(([gaugeNumber, mm]): WireGauge => ({ series: 'metric', gaugeNumber, diameterMm: rounded(mm, 3) }));

/** From the thinnest up. */
export function gaugesOf(series: GaugeSeries): readonly WireGauge[] {
  return series === 'inch' ? INCH_GAUGES : METRIC_GAUGES;
}

/**
 * Undefined where the series has no such number.
 * @example gaugeOfNumber('metric', 13.5)?.diameterMm // 0.8
 */
export function gaugeOfNumber(series: GaugeSeries, gaugeNumber: number): WireGauge | undefined {
  return gaugesOf(series).find((gauge) => gauge.gaugeNumber === gaugeNumber);
}

/**
 * The size of a series nearest to a diameter; undefined beyond half a step outside the series.
 * @example nearestGauge('inch', 0.99)?.gaugeNumber // 17
 */
export function nearestGauge(series: GaugeSeries, diameterMm: number): WireGauge | undefined {
  const gauges = gaugesOf(series);
  const nearest = gauges.reduce((best, gauge) =>
    Math.abs(gauge.diameterMm - diameterMm) < Math.abs(best.diameterMm - diameterMm) ? gauge : best,
  );
  const [first, second] = gauges;
  const [beforeLast, last] = gauges.slice(-2);
  if (!first || !second || !beforeLast || !last) return undefined;
  const least = first.diameterMm - (second.diameterMm - first.diameterMm) / 2;
  const most = last.diameterMm + (last.diameterMm - beforeLast.diameterMm) / 2;
  return diameterMm >= least && diameterMm <= most ? nearest : undefined;
}

/**
 * A micrometer's reading scatters by a few thousandths, and the two series lie at least 0.006 mm apart above number 12½. Chosen:
 * a diameter farther than this from every size of a series is no wire of that series.
 */
export const GAUGE_REACH_MM = 0.004;

/** The series whose sizes all the diameters are, to a few thousandths; the better fitting one where both are; undefined where none is. */
export function seriesOf(diametersMm: readonly number[]): GaugeSeries | undefined {
  const misfits = (['metric', 'inch'] as const).map((series) => ({
    series,
    misfitMm: largestMisfit(series, diametersMm),
  }));
  const best = misfits.reduce((one, other) => (other.misfitMm < one.misfitMm ? other : one));
  return best.misfitMm <= GAUGE_REACH_MM ? best.series : undefined;
}

function largestMisfit(series: GaugeSeries, diametersMm: readonly number[]): number {
  return Math.max(
    ...diametersMm.map((diameterMm) => {
      const gauge = nearestGauge(series, diameterMm);
      return gauge ? Math.abs(gauge.diameterMm - diameterMm) : Infinity;
    }),
  );
}

/** @example gaugeName(13.5) // '13½' */
export function gaugeName(gaugeNumber: number): string {
  return Number.isInteger(gaugeNumber) ? String(gaugeNumber) : `${Math.floor(gaugeNumber)}½`;
}

function halfNumbers(from: number, to: number): number[] {
  return Array.from({ length: 2 * (to - from) + 1 }, (_, index) => from + index / 2);
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
