import { describe, expect, it } from 'vitest';
import type { SegmentToMeasure } from '../../src/workers/listeningMessages.ts';
import { measureSegment } from '../../src/workers/measureSegment.ts';
import { synthesizeNote } from '../support/syntheticString.ts';

const SAMPLE_RATE_HZ = 44100;
const { samples, truth } = synthesizeNote({
  strings: [{ midi: 60, offsetCents: 4 }],
  durationS: 3,
  leadS: 0.3,
  sampleRateHz: SAMPLE_RATE_HZ,
  snrDb: 60,
  seed: 11,
});

const segment = (over: Partial<SegmentToMeasure> = {}): SegmentToMeasure => ({
  kind: 'segment',
  samples: Float32Array.from(samples),
  sampleRateHz: SAMPLE_RATE_HZ,
  startS: 12,
  onsetIndex: truth.onsetIndex,
  endedBy: 'next-strike',
  hasHole: false,
  settings: { pitchStandardHz: 440, stringPosition: 2 },
  settingsNumber: 0,
  ...over,
});

function readingOf(take: ReturnType<typeof measureSegment>) {
  if (!take.outcome.found) throw new Error(take.outcome.detail);
  return take.outcome.reading;
}

describe('measureSegment', () => {
  it('gives the reading of an unbroken take, at its place in the stream, for the string that was set', () => {
    const take = measureSegment(segment(), undefined);
    const reading = readingOf(take);
    expect(reading.midi).toBe(60);
    expect(reading.offsetCents).toBeCloseTo(4, 1);
    expect(reading.stringPosition).toBe(2);
    expect(take.onsetS).toBeCloseTo(12.3, 9);
    expect(reading.onsetS).toBeCloseTo(12.3, 9);
    expect(reading.quality).toMatchObject({ isUsable: true, faults: [] });
  });

  it('never passes a take with a hole as good', () => {
    const take = measureSegment(segment({ hasHole: true }), undefined);
    expect(readingOf(take).quality).toMatchObject({ isUsable: false, faults: ['hole-in-recording'] });
    expect(take.hasHole).toBe(true);
  });

  it('finds by itself that a stretch is missing which nothing marked', () => {
    const at = truth.onsetIndex + 30_000;
    const dropped = new Float32Array(samples.length - 700);
    dropped.set(samples.subarray(0, at));
    dropped.set(samples.subarray(at + 700), at);
    const take = measureSegment(segment({ samples: dropped }), undefined);
    expect(take.hasHole).toBe(true);
    expect(readingOf(take).quality.isUsable).toBe(false);
    expect(readingOf(take).quality.faults).toContain('hole-in-recording');
  });

  it('measures the note that was given, whatever it hears', () => {
    const forced = measureSegment(
      segment({ settings: { pitchStandardHz: 440, stringPosition: 0, midi: 61 } }),
      undefined,
    );
    expect(forced.outcome.found && forced.outcome.reading.midi).not.toBe(60);
  });
});
