import { deviceSetting } from './deviceSetting.ts';

/** How much of a take's sound is kept beside its figures. */
export type SoundKept = 'first-seconds' | 'whole' | 'none';

export const soundKept = deviceSetting<SoundKept>('stillpin-sound-kept', ['first-seconds', 'whole', 'none']);
