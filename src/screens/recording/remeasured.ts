/** A take measured again as another note. */
import type { TakeId } from '../../piano/ids.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { TakeMessage } from '../../workers/listeningMessages.ts';
import { renamedReading } from './recordSteps.ts';

export type TakeSound = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly startS: number;
  readonly onsetIndex: number;
};

/**
 * From the sound where it is still there, since a note taken for its octave had the wrong partials looked for; else, or where
 * nothing is found at that note, the old figures counted from the new note.
 */
export async function remeasured(
  reading: NoteReading,
  midi: number,
  sound: TakeSound | undefined,
): Promise<NoteReading> {
  const renamed = renamedReading(reading, midi);
  if (!sound) return renamed;
  const { measureTake } = await import('../../analysis/tone/measureTake.ts');
  const { pitchStandardHz, stringPosition } = reading;
  const { samples, sampleRateHz, startS, onsetIndex } = sound;
  const outcome = measureTake(samples, sampleRateHz, { pitchStandardHz, stringPosition, midi, startS, onsetIndex });
  return outcome.found ? outcome.reading : renamed;
}

/** So many takes keep their sound in memory: some megabytes, enough to correct what was just played. */
const SOUNDS_KEPT = 8;

export function keepSound(sounds: Map<TakeId, TakeSound>, id: TakeId, told: TakeMessage): void {
  const { samples, sampleRateHz, startS, onsetS } = told;
  sounds.set(id, { samples, sampleRateHz, startS, onsetIndex: Math.round((onsetS - startS) * sampleRateHz) });
  for (const old of [...sounds.keys()].slice(0, -SOUNDS_KEPT)) sounds.delete(old);
}
