import { useEffect, useRef, useState } from 'react';
import type { TakeSound } from '../piano/instrument.ts';

/** So much is heard before the strike. */
const LEAD_S = 0.1;

export type UnpackSound = (
  bytes: TakeSound['bytes'],
) => Promise<{ readonly samples: Float32Array<ArrayBuffer>; readonly sampleRateHz: number }>;

export type Playback = {
  readonly isPlaying: boolean;
  /** Why it could not be played. */
  readonly fault: string | null;
  readonly play: (sound: TakeSound) => Promise<void>;
  readonly stop: () => void;
};

/**
 * Plays a take's sound as it was recorded, at its own loudness.
 * @param unpack makes samples of a stored sound
 */
export function usePlayback(unpack: UnpackSound): Playback {
  const [isPlaying, setPlaying] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const context = useRef<AudioContext | null>(null);
  const stop = () => {
    void context.current?.close();
    context.current = null;
    setPlaying(false);
  };
  const play = async (sound: TakeSound) => {
    stop();
    const playing = new AudioContext(); // at once, while the press of the button still counts as the user's wish
    context.current = playing;
    setPlaying(true);
    setFault(null);
    try {
      const { samples, sampleRateHz } = await unpack(sound.bytes);
      if (context.current !== playing) return;
      const source = sourceOf(playing, samples, sampleRateHz);
      source.onended = () => context.current === playing && stop();
      source.start(0, Math.max(0, sound.onsetIndex / sampleRateHz - LEAD_S));
    } catch (error) {
      stop();
      setFault(error instanceof Error ? error.message : String(error));
    }
  };
  useEffect(() => () => void context.current?.close(), []);
  return { isPlaying, fault, play, stop };
}

/** The buffer keeps the sound's own rate; the context brings it to the device's. */
function sourceOf(context: AudioContext, samples: Float32Array<ArrayBuffer>, sampleRate: number) {
  const buffer = new AudioBuffer({ length: samples.length, numberOfChannels: 1, sampleRate });
  buffer.copyToChannel(samples, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(context.destination);
  return source;
}
