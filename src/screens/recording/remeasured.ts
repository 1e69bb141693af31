/** A take measured again as another note. */
import type { NoteReading } from '../../piano/reading.ts';
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
