/** What this device's people count as a slip that matters, and as a piano that is due. */
import { type DeviceSetting, deviceSetting } from './deviceSetting.ts';

export type SlipThreshold = '1' | '0.5' | '1.5' | '2' | '3';
export const SLIP_THRESHOLDS: readonly SlipThreshold[] = ['0.5', '1', '1.5', '2', '3'];

/** Cents a year. 1 until something else is chosen: after five years such a string stands 5 cents off its unison. */
export const slipThreshold: DeviceSetting<SlipThreshold> = deviceSetting('stillpin-slip-that-matters', [
  '1',
  '0.5',
  '1.5',
  '2',
  '3',
]);

export type DueLimit = '5' | '3' | '8' | '12';
export const DUE_LIMITS: readonly DueLimit[] = ['3', '5', '8', '12'];

/** Root mean square departure in cents at which a piano is due. */
export const dueLimit: DeviceSetting<DueLimit> = deviceSetting('stillpin-due-limit', ['5', '3', '8', '12']);
