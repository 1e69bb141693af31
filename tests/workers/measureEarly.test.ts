import { describe, expect, it } from 'vitest';
import type { EarlyToMeasure } from '../../src/workers/listeningMessages.ts';
import { measureEarly } from '../../src/workers/measureEarly.ts';
import { synthesizeNote } from '../support/syntheticString.ts';

const SAMPLE_RATE_HZ = 44100;

function soundingOf(midi: number, toneS: number): EarlyToMeasure {
  const { samples, truth } = synthesizeNote({
    strings: [{ midi, offsetCents: 4 }],
    durationS: 0.3 + toneS,
    leadS: 0.3,
    sampleRateHz: SAMPLE_RATE_HZ,
    snrDb: 40,
    seed: midi,
  });
  return {
    kind: 'early',
    samples: Float32Array.from(samples),
    sampleRateHz: SAMPLE_RATE_HZ,
    startS: 12,
    onsetIndex: truth.onsetIndex,
    settings: { pitchStandardHz: 440, stringPosition: 0 },
    settingsNumber: 0,
  };
}

describe('measureEarly', () => {
  it.each([21, 33, 45, 57, 69, 81, 93, 105])('names MIDI %d after 0.8 s, and says how sure it is', (midi) => {
    const early = measureEarly(soundingOf(midi, 0.8), undefined);
    if (!early) throw new Error('nothing was found');
    expect(early.midi).toBe(midi);
    expect(early.onsetS).toBeCloseTo(12.3, 9);
    expect(early.toneS).toBeCloseTo(0.8, 1);
    // Four standard deviations, and 0.05 cents for what a model of partials cannot follow.
    expect(Math.abs(early.offsetCents - 4)).toBeLessThan(4 * early.offsetStandardUncertaintyCents + 0.05);
  });

  it('says nothing where no note is found yet', () => {
    const samples = new Float32Array(SAMPLE_RATE_HZ);
    expect(measureEarly({ ...soundingOf(60, 1), samples }, undefined)).toBeUndefined();
  });
});
