/** Language and units as they are chosen on this device. */
import type { LengthUnit, TemperatureUnit } from '../piano/formatUnits.ts';
import type { TorqueUnit } from '../piano/torque.ts';
import { lengthUnit, temperatureUnit, torqueUnit } from '../ui/deviceUnits.ts';
import { type LanguageChoice, languageSetting } from './language.ts';

export type DeviceChoices = {
  readonly language: LanguageChoice;
  readonly length: LengthUnit;
  readonly temperature: TemperatureUnit;
  readonly torque: TorqueUnit;
};

export function deviceChoices(): DeviceChoices {
  return {
    language: languageSetting.read(),
    length: lengthUnit.read(),
    temperature: temperatureUnit.read(),
    torque: torqueUnit.read(),
  };
}

export function keepDeviceChoices({ language, length, temperature, torque }: DeviceChoices): void {
  languageSetting.write(language);
  lengthUnit.write(length);
  temperatureUnit.write(temperature);
  torqueUnit.write(torque);
}
