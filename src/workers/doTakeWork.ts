/** The take worker's work, apart from the messages. */
import { levelSpectrum } from '../analysis/signal/levelSpectrum.ts';
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import { decodeTakeSound, encodeTakeSound } from '../files/audio/takeSound.ts';
import type { TakeOutcome } from '../piano/reading.ts';
import { measureSegment, withHole } from './measureSegment.ts';
import type { MeasureAgainWork, TakeResult, TakeWork } from './takeWork.ts';

/** @throws {Error} where stored bytes are no sound, and what the measuring throws */
export async function doTakeWork(work: TakeWork): Promise<TakeResult<TakeWork>> {
  switch (work.kind) {
    case 'measure': {
      const { outcome, hasHole } = measureSegment(work.segment, work.expectedMidi ?? undefined);
      return { outcome, hasHole };
    }
    case 'encode':
      return encodeTakeSound(work.samples, work.sampleRateHz);
    case 'decode': {
      const { samples, sampleRateHz } = await decodeTakeSound(work.bytes);
      return { samples: new Float32Array(samples), sampleRateHz };
    }
    case 'measure-again':
      return measureAgain(work);
    case 'spectrum':
      return levelSpectrum(work.samples, work.sampleRateHz, work.request);
  }
}

/**
 * The sound as it was first measured: without the note, so that the same program finds the same figures. Where that finds another
 * note than the take's, somebody knew better, and the take's note is measured.
 */
async function measureAgain(work: MeasureAgainWork): Promise<TakeOutcome> {
  const { pitchStandardHz, stringPosition, midi, hasHole } = work;
  const { onsetIndex, startS } = work.sound;
  const { samples, sampleRateHz } = await decodeTakeSound(work.sound.bytes);
  const options: MeasureOptions = { pitchStandardHz, stringPosition, onsetIndex, startS };
  const found = measureTake(samples, sampleRateHz, { ...options, expectedMidi: midi });
  const isSame = found.found && found.reading.midi === midi;
  const outcome = isSame ? found : measureTake(samples, sampleRateHz, { ...options, midi });
  return hasHole ? withHole(outcome) : outcome;
}
