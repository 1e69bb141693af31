/** What is asked of the microphone, and whether it was granted: browsers treat these wishes as wishes. */

const WANTED = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
} as const;

export type MicrophoneSetting = keyof typeof WANTED;

/** Every processing step meant for speech off, one channel; `deviceId` where the user chose a microphone. */
export function microphoneConstraints(deviceId?: string): MediaTrackConstraints {
  return deviceId === undefined ? { ...WANTED } : { ...WANTED, deviceId: { exact: deviceId } };
}

export type SettingsReport = {
  /** Settings that the browser says are otherwise than asked. Speech processing left on falsifies level, decay and pitch. */
  readonly notHonoured: readonly MicrophoneSetting[];
  /** Settings that the browser says nothing about. */
  readonly notReported: readonly MicrophoneSetting[];
};

export function reportSettings(settings: MediaTrackSettings): SettingsReport {
  const names = Object.keys(WANTED) as MicrophoneSetting[];
  return {
    notHonoured: names.filter((name) => settings[name] !== undefined && settings[name] !== WANTED[name]),
    notReported: names.filter((name) => settings[name] === undefined),
  };
}
