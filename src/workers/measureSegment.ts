/** One cut stretch becomes a take with its outcome: the measuring worker's work, apart from the messages. */
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import type { NoteReading, TakeOutcome } from '../piano/reading.ts';
import type { SegmentToMeasure, TakeMessage } from './listeningMessages.ts';

/** @param expectedMidi the note that a walk up the compass has come to, where there is one */
export function measureSegment(segment: SegmentToMeasure, expectedMidi: number | undefined): TakeMessage {
  const { samples, sampleRateHz, startS, onsetIndex, hasHole, settings } = segment;
  const options: MeasureOptions = {
    pitchStandardHz: settings.pitchStandardHz,
    stringPosition: settings.stringPosition,
    onsetIndex,
    startS,
    ...(settings.midi !== undefined && { midi: settings.midi }),
    ...(expectedMidi !== undefined && { expectedMidi }),
  };
  const outcome = measureTake(samples, sampleRateHz, options);
  return takeOf(segment, hasHole ? withHole(outcome) : outcome);
}

export function takeOf(segment: SegmentToMeasure, outcome: TakeOutcome): TakeMessage {
  const { samples, sampleRateHz, startS, onsetIndex, endedBy, hasHole, settings } = segment;
  const onsetS = startS + onsetIndex / sampleRateHz;
  const durationS = samples.length / sampleRateHz;
  return { kind: 'take', outcome, settings, startS, onsetS, durationS, endedBy, hasHole, samples, sampleRateHz };
}

/** A take with a hole in it is never passed as good: what follows the hole is shifted in time. */
export function withHole(outcome: TakeOutcome): TakeOutcome {
  if (!outcome.found) return outcome;
  const { reading } = outcome;
  const faults = reading.quality.faults.includes('hole-in-recording')
    ? reading.quality.faults
    : ([...reading.quality.faults, 'hole-in-recording'] as const);
  const marked: NoteReading = { ...reading, quality: { ...reading.quality, isUsable: false, faults } };
  return { found: true, reading: marked };
}
