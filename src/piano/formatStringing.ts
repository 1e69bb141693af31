/** Figures of strings as people read them: lengths, sizes of wire, pull and stress. Lengths are good to half a millimetre, wire to a few thousandths. */
import { formatNumber, formatSigned, NOT_MEASURED } from './format.ts';
import { GAUGE_REACH_MM, gaugeName, mmToInches, nearestGauge, seriesOf, type WireGauge } from './wireGauge.ts';

const NO_BREAK_SPACE = '\u00a0';
const THIN_SPACE = '\u2009';

/** A tonne hanging on a string, at standard gravity (definition, 1901). */
const NEWTONS_PER_TONNE_FORCE = 9806.65;

/** @example formatLengthMm(412.54) // '412.5 mm' */
export function formatLengthMm(lengthMm: number | null): string {
  return lengthMm === null ? NOT_MEASURED : `${formatNumber(lengthMm, 1)}${NO_BREAK_SPACE}mm`;
}

/** To a thousandth. @example formatWireMm(0.975) // '0.975 mm' */
export function formatWireMm(diameterMm: number | null): string {
  return diameterMm === null ? NOT_MEASURED : `${formatNumber(diameterMm, 3)}${NO_BREAK_SPACE}mm`;
}

/** @example formatWireInches(0.975) // '0.0384 in' */
export function formatWireInches(diameterMm: number): string {
  return `${formatNumber(mmToInches(diameterMm), 4)}${NO_BREAK_SPACE}in`;
}

/** A size by its number and series. @example formatGauge({ series: 'metric', gaugeNumber: 13.5, diameterMm: 0.8 }) // 'metric 13½' */
export function formatGauge({ series, gaugeNumber }: Pick<WireGauge, 'series' | 'gaugeNumber'>): string {
  return `${series} ${gaugeName(gaugeNumber)}`;
}

/**
 * A size by its number, series and diameter.
 * @example formatGaugeSize({ series: 'metric', gaugeNumber: 13.5, diameterMm: 0.8 }) // 'metric 13½ (0.800 mm)'
 */
export function formatGaugeSize(gauge: WireGauge): string {
  return `${formatGauge(gauge)} (${formatWireMm(gauge.diameterMm)})`;
}

/** The number of a wire that has one, and its inches. @example formatWireOtherwise(0.8) // 'metric 13½ · 0.0315 in' */
export function formatWireOtherwise(diameterMm: number): string {
  const series = seriesOf([diameterMm]);
  const gauge = series && nearestGauge(series, diameterMm);
  const isOfSeries = gauge !== undefined && Math.abs(gauge.diameterMm - diameterMm) <= GAUGE_REACH_MM;
  return isOfSeries ? `${formatGauge(gauge)} · ${formatWireInches(diameterMm)}` : formatWireInches(diameterMm);
}

/** The pull of one string or one note. @example formatTension(664.5) // '664 N' */
export function formatTension(tensionN: number | null): string {
  return tensionN === null ? NOT_MEASURED : `${formatNumber(tensionN, 0)}${NO_BREAK_SPACE}N`;
}

/** The pull of many strings. @example formatPull(162278) // '162.3 kN (16.5 tonnes-force)' */
export function formatPull(tensionN: number): string {
  return `${formatKilonewtons(tensionN)} (${formatTonnes(tensionN)}${NO_BREAK_SPACE}tonnes-force)`;
}

/** Under a heading that names the unit. @example formatTonnes(162278) // '16.5' */
export function formatTonnes(tensionN: number): string {
  return formatNumber(tensionN / NEWTONS_PER_TONNE_FORCE, 1);
}

/** @example formatKilonewtons(162278) // '162.3 kN' */
export function formatKilonewtons(tensionN: number): string {
  return `${formatNumber(tensionN / 1000, 1)}${NO_BREAK_SPACE}kN`;
}

/** @example formatAddedPull(3700) // '+3.7 kN (+0.38 tonnes-force)' */
export function formatAddedPull(addedN: number): string {
  const tonnes = `${formatSigned(addedN / NEWTONS_PER_TONNE_FORCE, 2)}${NO_BREAK_SPACE}tonnes-force`;
  return `${formatSigned(addedN / 1000, 1)}${NO_BREAK_SPACE}kN (${tonnes})`;
}

/** @example formatStress(972.6) // '973 MPa' */
export function formatStress(stressMpa: number | null): string {
  return stressMpa === null ? NOT_MEASURED : `${formatNumber(stressMpa, 0)}${NO_BREAK_SPACE}MPa`;
}

/** A change as a percentage with its sign; one decimal below ten. @example formatGrowth(0.0231) // '+2.3 %' */
export function formatGrowth(growth: number | null): string {
  if (growth === null) return NOT_MEASURED;
  const percent = 100 * growth;
  return `${formatSigned(percent, Math.abs(percent) < 9.95 ? 1 : 0)}${THIN_SPACE}%`;
}
