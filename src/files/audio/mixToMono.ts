/** Several channels as one. */
import type { AudioWarning } from './audioStream.ts';

/**
 * The mean of the channels, sample by sample; channels of unequal length count as silent after their end.
 * Two microphones at different places cancel some partials and strengthen others, but move none of them in frequency.
 */
export function mixToMono(channels: readonly Float32Array[]): Float32Array {
  const [first] = channels;
  if (channels.length === 1 && first) return first;
  const mixed = new Float32Array(channels.reduce((longest, channel) => Math.max(longest, channel.length), 0));
  for (const channel of channels)
    for (let index = 0; index < channel.length; index += 1)
      mixed[index] = (mixed[index] ?? 0) + (channel[index] ?? 0) / channels.length;
  return mixed;
}

/** Nothing for one channel. */
export function mixWarnings(channelCount: number): AudioWarning[] {
  if (channelCount === 1) return [];
  return [{ kind: 'mixed-to-mono', message: `${channelCount} channels were mixed to one` }];
}
