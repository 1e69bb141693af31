import type { TorqueUnit } from '../../piano/torque.ts';
import { deviceSetting } from '../../ui/deviceSetting.ts';

/** What the wrench of this device's user reads. */
export const torqueUnit = deviceSetting<TorqueUnit>('stillpin-torque-unit', ['N·m', 'in·lb']);
