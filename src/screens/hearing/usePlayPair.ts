import { useEffect, useRef, useState } from 'react';
import type { LeveledSound } from './equalLoudness.ts';

/** Silence between the two. */
const GAP_S = 0.4;

export type PlayPosition = { readonly index: 0 | 1; readonly timeS: number };

export type PairPlayer = {
  /** Null: nothing plays. */
  readonly position: PlayPosition | null;
  readonly play: (indexes: readonly (0 | 1)[]) => void;
  readonly stop: () => void;
};

type Part = { readonly index: 0 | 1; readonly startS: number; readonly durationS: number };

/** Plays one sound or one after the other, and says where it is, picture by picture. */
export function usePlayPair(sounds: readonly [LeveledSound, LeveledSound]): PairPlayer {
  const [position, setPosition] = useState<PlayPosition | null>(null);
  const context = useRef<AudioContext | null>(null);
  const stop = () => {
    void context.current?.close();
    context.current = null;
    setPosition(null);
  };
  const play = (indexes: readonly (0 | 1)[]) => {
    stop();
    const playing = new AudioContext();
    context.current = playing;
    const parts = schedule(playing, sounds, indexes);
    const follow = () => {
      if (context.current !== playing) return;
      const part = parts.find(({ startS, durationS }) => playing.currentTime < startS + durationS);
      if (!part) return stop();
      setPosition({ index: part.index, timeS: Math.max(0, playing.currentTime - part.startS) });
      window.requestAnimationFrame(follow);
    };
    follow();
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: other sounds end what plays
  useEffect(() => stop, [sounds]);
  return { position, play, stop };
}

function schedule(
  context: AudioContext,
  sounds: readonly [LeveledSound, LeveledSound],
  indexes: readonly (0 | 1)[],
): Part[] {
  let startS = context.currentTime + 0.05;
  return indexes.map((index) => {
    const { samples, sampleRateHz } = sounds[index];
    const buffer = new AudioBuffer({ length: samples.length, numberOfChannels: 1, sampleRate: sampleRateHz });
    buffer.copyToChannel(samples, 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(context.destination);
    source.start(startS);
    const part = { index, startS, durationS: buffer.duration };
    startS += buffer.duration + GAP_S;
    return part;
  });
}
