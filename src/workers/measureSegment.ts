/** One cut stretch becomes a take with its outcome: the measuring worker's work, apart from the messages. */
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import { skipAfterStrikeS } from '../analysis/tone/takeBounds.ts';
import type { NoteReading, TakeOutcome } from '../piano/reading.ts';
import { findJumps } from './jumpFinder.ts';
import type { EarlyToMeasure, SegmentToMeasure, TakeMessage } from './listeningMessages.ts';

/** @param expectedMidi the note that a walk up the compass has come to, where there is one */
export function measureSegment(segment: SegmentToMeasure, expectedMidi: number | undefined): TakeMessage {
  const outcome = measureTake(segment.samples, segment.sampleRateHz, measureOptions(segment, expectedMidi));
  const hasHole = segment.hasHole || hasJump(segment, outcome);
  return takeOf({ ...segment, hasHole }, hasHole ? withHole(outcome) : outcome);
}

/** How a take is measured, also while it still sounds. */
export function measureOptions(
  { settings, onsetIndex, startS }: EarlyToMeasure | SegmentToMeasure,
  expectedMidi: number | undefined,
): MeasureOptions {
  return {
    pitchStandardHz: settings.pitchStandardHz,
    stringPosition: settings.stringPosition,
    onsetIndex,
    startS,
    ...(settings.midi !== undefined && { midi: settings.midi }),
    ...(expectedMidi !== undefined && { expectedMidi }),
  };
}

/** Whether the stretch that was measured has a jump in it. */
function hasJump({ samples, sampleRateHz, onsetIndex }: SegmentToMeasure, outcome: TakeOutcome): boolean {
  if (!outcome.found) return false;
  const { durationS, partial1Hz } = outcome.reading;
  const start = onsetIndex + Math.round(skipAfterStrikeS(partial1Hz) * sampleRateHz);
  const end = onsetIndex + Math.round(durationS * sampleRateHz);
  return findJumps(samples.subarray(0, end), start).length > 0;
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
