/**
 * The units in which figures are shown and typed, one choice for the whole program. Records and formulas stay metric: only what people
 * read and type is converted, here. Metric where nobody says.
 */
import type { TorqueUnit } from './torque.ts';
import { inchesToMm, mmToInches } from './wireGauge.ts';

export const LENGTH_UNITS = ['mm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];
export const TEMPERATURE_UNITS = ['°C', '°F'] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];
export const TORQUE_UNITS = ['N·m', 'in·lb'] as const satisfies readonly TorqueUnit[];

export type Units = { readonly length: LengthUnit; readonly temperature: TemperatureUnit; readonly torque: TorqueUnit };

let units: Units = { length: 'mm', temperature: '°C', torque: 'N·m' };

export function showUnits(chosen: Partial<Units>): void {
  units = { ...units, ...chosen };
}

export function shownUnits(): Units {
  return units;
}

/** @example celsiusToFahrenheit(20) // 68 */
function celsiusToFahrenheit(temperatureC: number): number {
  return temperatureC * 1.8 + 32;
}

/** @example fahrenheitToCelsius(68) // 20 */
function fahrenheitToCelsius(temperatureF: number): number {
  return (temperatureF - 32) / 1.8;
}

/** From the records to the unit that is shown. */
export function shownTemperature(temperatureC: number): number {
  return units.temperature === '°F' ? celsiusToFahrenheit(temperatureC) : temperatureC;
}

/** From the unit that is typed to the records, to a thousandth of a degree, so that what was typed comes back as it was. */
export function typedTemperatureC(temperature: number): number {
  return units.temperature === '°F' ? Math.round(1000 * fahrenheitToCelsius(temperature)) / 1000 : temperature;
}

export function shownLength(lengthMm: number): number {
  return units.length === 'in' ? mmToInches(lengthMm) : lengthMm;
}

/** To a thousandth of a millimetre. A length of that fineness is the same again after it stood in a field in inches with five decimals. */
export function typedLengthMm(length: number): number {
  return units.length === 'in' ? Math.round(1000 * inchesToMm(length)) / 1000 : length;
}
