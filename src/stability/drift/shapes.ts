/** Smooth courses along the compass that a whole bridge's movement is made of. */
import type { PianoString } from './changeRows.ts';

/**
 * The shapes of smooth_k at each string: bass bridge against treble bridge, a slope along each, and bends along the treble. Smooth
 * enough that a zone of a dozen notes with an edge at a strut is not one of them.
 */
export function shapesOf(strings: readonly PianoString[], bassBridgeTopMidi: number): Float64Array[] {
  const lowest = Math.min(...strings.map((string) => string.midi));
  const highest = Math.max(...strings.map((string) => string.midi));
  const isBass = (midi: number) => midi <= bassBridgeTopMidi;
  const bassShare = strings.filter((string) => isBass(string.midi)).length / Math.max(1, strings.length);
  // −1 at a bridge's lower end, +1 at its upper.
  const onBass = (midi: number) => (2 * (midi - lowest)) / Math.max(1, bassBridgeTopMidi - lowest) - 1;
  const onTreble = (midi: number) =>
    (2 * (midi - bassBridgeTopMidi - 1)) / Math.max(1, highest - bassBridgeTopMidi - 1) - 1;
  const treble = (shape: (x: number) => number) =>
    Float64Array.from(strings, ({ midi }) => (isBass(midi) ? 0 : shape(onTreble(midi))));
  return [
    Float64Array.from(strings, ({ midi }) => (isBass(midi) ? 1 - bassShare : -bassShare)),
    Float64Array.from(strings, ({ midi }) => (isBass(midi) ? onBass(midi) : 0)),
    treble((x) => x),
    treble((x) => 1.5 * x * x - 0.5),
    treble((x) => 2.5 * x ** 3 - 1.5 * x),
  ];
}
