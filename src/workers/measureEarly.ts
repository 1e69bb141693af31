/** A first reading of a take that still sounds: for the eye, not for the records. */
import { measureTake } from '../analysis/tone/measureTake.ts';
import type { EarlyMessage, EarlyToMeasure } from './listeningMessages.ts';
import { measureOptions } from './measureSegment.ts';

/** Undefined where no note is found yet: the whole take will say why, or find it. */
export function measureEarly(sounding: EarlyToMeasure, expectedMidi: number | undefined): EarlyMessage | undefined {
  const { samples, sampleRateHz, startS, onsetIndex } = sounding;
  const outcome = measureTake(samples, sampleRateHz, measureOptions(sounding, expectedMidi));
  if (!outcome.found) return undefined;
  const { midi, offsetCents, offsetStandardUncertaintyCents } = outcome.reading;
  const onsetS = startS + onsetIndex / sampleRateHz;
  const toneS = (samples.length - onsetIndex) / sampleRateHz;
  return { kind: 'early', onsetS, toneS, midi, offsetCents, offsetStandardUncertaintyCents };
}
