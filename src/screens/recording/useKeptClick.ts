import { useEffect, useRef } from 'react';
import type { TakeId } from '../../piano/ids.ts';
import { clickSamples } from './keptClick.ts';

/** Clicks once for each take that becomes stored and good while the screen is open. */
export function useKeptClick(isOn: boolean, storedTakeId: TakeId | null): void {
  const context = useRef<AudioContext | null>(null);
  const known = useRef(new Set([storedTakeId]));
  useEffect(() => {
    if (storedTakeId === null || known.current.has(storedTakeId)) return; // undoing shows an earlier one again
    known.current.add(storedTakeId);
    if (!isOn) return;
    context.current ??= new AudioContext();
    play(context.current);
  }, [isOn, storedTakeId]);
  useEffect(() => () => void context.current?.close(), []);
}

function play(context: AudioContext): void {
  const samples = clickSamples(context.sampleRate);
  const buffer = new AudioBuffer({ length: samples.length, sampleRate: context.sampleRate, numberOfChannels: 1 });
  buffer.copyToChannel(samples, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(context.destination);
  source.start();
}
