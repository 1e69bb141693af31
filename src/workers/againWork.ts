import type { Take, TakeSound } from '../piano/instrument.ts';
import type { MeasureAgainWork } from './takeWork.ts';

/** What a take worker is asked to measure a stored sound again. */
export function againWork({ midi, reading }: Take, { bytes, onsetIndex, startS }: TakeSound): MeasureAgainWork {
  const { pitchStandardHz, stringPosition, quality } = reading;
  const hasHole = quality.faults.includes('hole-in-recording');
  return {
    kind: 'measure-again',
    sound: { bytes, onsetIndex, startS },
    pitchStandardHz,
    stringPosition,
    midi,
    hasHole,
  };
}
