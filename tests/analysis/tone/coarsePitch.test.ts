import { describe, expect, it } from 'vitest';
import { coarsePitches } from '../../../src/analysis/tone/coarsePitch.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { midiToHz } from '../../../src/piano/note.ts';
import { takeOf } from '../takes.ts';

describe('coarsePitches', () => {
  // C2 to C6, where an autocorrelation does not jump octaves. The frequencies are ISO 16's equal temperament.
  it.each([36, 48, 60, 72, 84])('proposes MIDI %s within half a semitone, at two moments', (midi) => {
    for (const sampleRateHz of [22050, 48000]) {
      const { samples, truth } = takeOf({ strings: [{ midi }], sampleRateHz, snrDb: 25, durationS: 1 });
      const heard = coarsePitches(samples, truth.onsetIndex, sampleRateHz);
      expect(heard).toHaveLength(2);
      for (const hz of heard) expect(Math.abs(hzToCents(hz, midiToHz(midi, 440)))).toBeLessThan(50);
    }
  });

  it('does not depend on the level', () => {
    const { samples, truth } = takeOf({ strings: [{ midi: 60 }], durationS: 1 });
    const soft = samples.map((value) => value / 4096);
    expect(coarsePitches(soft, truth.onsetIndex, 22050)).toEqual(coarsePitches(samples, truth.onsetIndex, 22050));
  });

  it('proposes nothing in silence, nor past the end', () => {
    expect(coarsePitches(new Float32Array(22050), 0, 22050)).toEqual([]);
    expect(coarsePitches(new Float32Array(2000).fill(0.1), 0, 22050)).toEqual([]);
  });
});
