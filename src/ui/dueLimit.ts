/** What this device's people count as a piano that is due. */
import { type DeviceSetting, deviceSetting } from './deviceSetting.ts';

export type DueLimit = '5' | '3' | '8' | '12';
export const DUE_LIMITS: readonly DueLimit[] = ['3', '5', '8', '12'];

/** Root mean square departure in cents at which a piano is due. */
export const dueLimit: DeviceSetting<DueLimit> = deviceSetting('stillpin-due-limit', ['5', '3', '8', '12']);
