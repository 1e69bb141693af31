/** Notices when a running microphone stops delivering, and when it comes back. */

export type LossReason = 'microphone-ended' | 'device-gone' | 'microphone-muted' | 'audio-interrupted';

export type Loss = {
  readonly reason: LossReason;
  /** False where listening has to be started anew. */
  readonly mayReturn: boolean;
};

export type LossWatch = { readonly onLost: (loss: Loss) => void; readonly onRestored: () => void };

/** Returns the function that ends the watch. Each loss is told once; the watch takes no step itself but asking a context to go on. */
export function watchForLoss(track: MediaStreamTrack, context: AudioContext, watch: LossWatch): () => void {
  const watching = new AbortController();
  const { signal } = watching;
  let current: LossReason | undefined;
  const lose = (reason: LossReason, mayReturn: boolean) => {
    if (current !== undefined) return;
    current = reason;
    watch.onLost({ reason, mayReturn });
  };
  const restore = (reason: LossReason) => {
    if (current !== reason) return;
    current = undefined;
    watch.onRestored();
  };
  track.addEventListener('ended', () => lose('microphone-ended', false), { signal });
  track.addEventListener('mute', () => lose('microphone-muted', true), { signal });
  track.addEventListener('unmute', () => restore('microphone-muted'), { signal });
  const checkContext = () =>
    context.state === 'running' ? restore('audio-interrupted') : lose('audio-interrupted', true);
  context.addEventListener('statechange', checkContext, { signal });
  const checkDevices = async () => {
    if (!(await isPresent(track)) && !signal.aborted) lose('device-gone', false);
  };
  navigator.mediaDevices.addEventListener('devicechange', checkDevices, { signal });
  const goOnWhenSeen = () => {
    if (document.visibilityState === 'visible' && current === 'audio-interrupted') void context.resume();
  };
  document.addEventListener('visibilitychange', goOnWhenSeen, { signal });
  return () => watching.abort();
}

/** Whether the browser still lists the track's device; one whose id is not told counts as present. */
async function isPresent(track: MediaStreamTrack): Promise<boolean> {
  const { deviceId } = track.getSettings();
  if (deviceId === undefined || deviceId === '') return true;
  const devices = await navigator.mediaDevices.enumerateDevices();
  return devices.some((device) => device.kind === 'audioinput' && device.deviceId === deviceId);
}
