/** The units of this device's user. Records are metric whatever is chosen here. */
import {
  LENGTH_UNITS,
  type LengthUnit,
  showUnits,
  TEMPERATURE_UNITS,
  type TemperatureUnit,
  TORQUE_UNITS,
} from '../piano/formatUnits.ts';
import type { TorqueUnit } from '../piano/torque.ts';
import { deviceSetting } from './deviceSetting.ts';

export const lengthUnit = deviceSetting<LengthUnit>('stillpin-length-unit', LENGTH_UNITS);
export const temperatureUnit = deviceSetting<TemperatureUnit>('stillpin-temperature-unit', TEMPERATURE_UNITS);
/** What the wrench reads. */
export const torqueUnit = deviceSetting<TorqueUnit>('stillpin-torque-unit', TORQUE_UNITS);

/** From now on figures are shown in the units that were chosen on this device. */
export function showDeviceUnits(): void {
  showUnits({ length: lengthUnit.read(), temperature: temperatureUnit.read(), torque: torqueUnit.read() });
}
