import { describe, expect, it } from 'vitest';
import { findNote } from '../../../src/analysis/tone/findNote.ts';
import { skipAfterStrikeS } from '../../../src/analysis/tone/takeBounds.ts';
import { trackPartials } from '../../../src/analysis/tone/trackPartials.ts';
import { hzToCents } from '../../../src/piano/cents.ts';
import { typicalB } from '../../support/typicalPiano.ts';
import { type TakeSpec, takeOf } from '../takes.ts';

function track(spec: TakeSpec, add: (samples: Float32Array, sampleRateHz: number) => void = () => undefined) {
  const take = takeOf(spec);
  add(take.samples, take.sampleRateHz);
  const { samples, sampleRateHz } = take;
  const bounds = { samples, sampleRateHz, onsetIndex: take.truth.onsetIndex, endIndex: samples.length };
  const midi = spec.strings[0]!.midi;
  const { candidates, peaks } = findNote({ ...bounds, pitchStandardHz: 440, midi });
  const candidate = candidates[0]!;
  const startIndex = bounds.onsetIndex + Math.round(skipAfterStrikeS(candidate.f0Hz) * sampleRateHz);
  return { tone: trackPartials({ ...bounds, startIndex, candidate, peaks }), truth: take.truth.strings[0]!, take };
}

/** A tone that begins with the strike at 0.3 s and dies by 60 dB in 2 s. */
const addTone = (hz: number, amplitude: number) => (samples: Float32Array, sampleRateHz: number) => {
  for (let n = Math.round(0.3 * sampleRateHz); n < samples.length; n++) {
    const timeS = n / sampleRateHz;
    samples[n]! += amplitude * Math.exp((-Math.log(1000) / 2) * (timeS - 0.3)) * Math.cos(2 * Math.PI * hz * timeS);
  }
};

describe('trackPartials', () => {
  it.each([
    { midi: 24, least: 20 },
    { midi: 45, least: 18 },
    { midi: 64, least: 10 },
    { midi: 84, least: 4 },
    { midi: 100, least: 2 },
  ])('finds at least $least partials of MIDI $midi, each rightly numbered', ({ midi, least }) => {
    const { tone, truth } = track({ strings: [{ midi, offsetCents: 7 }], snrDb: 35, durationS: 1.6, seed: midi });
    expect(tone.partials.length).toBeGreaterThanOrEqual(least);
    for (const partial of tone.partials) {
      const cents = hzToCents(partial.hz, truth.partialHz[partial.partialNumber - 1]!);
      const sigmaCents = (1731 * partial.standardUncertaintyHz) / partial.hz;
      expect(Math.abs(cents)).toBeLessThan(5 * sigmaCents + 0.01);
    }
  });

  it.each([
    { midi: 33, factor: 0.4 },
    { midi: 33, factor: 2.2 },
    { midi: 60, factor: 0.6 },
    { midi: 60, factor: 1.6 },
    { midi: 90, factor: 0.7 },
    { midi: 90, factor: 1.5 },
  ])('finds B of MIDI $midi at $factor times the usual', ({ midi, factor }) => {
    const inharmonicityB = factor * typicalB(midi);
    const { tone } = track({ strings: [{ midi, inharmonicityB }], snrDb: 40, durationS: 1.6, seed: 3 });
    expect(Math.abs(tone.fit!.inharmonicityB / inharmonicityB - 1)).toBeLessThan(1e-3);
  });

  it('takes no phantom at the sum of two partials for a partial', () => {
    const midi = 48;
    const truth = track({ strings: [{ midi }] }).truth;
    // Longitudinal forcing sounds at f_m + f_n (H. A. Conklin, J. Acoust. Soc. Am. 105 (1999) 536), below partial m + n.
    const { tone } = track({ strings: [{ midi }], snrDb: 45 }, (samples, rate) => {
      addTone(truth.partialHz[5]! + truth.partialHz[6]!, 0.004)(samples, rate);
      addTone(truth.partialHz[6]! + truth.partialHz[7]!, 0.004)(samples, rate);
    });
    for (const partial of tone.partials) {
      expect(Math.abs(hzToCents(partial.hz, truth.partialHz[partial.partialNumber - 1]!))).toBeLessThan(0.05);
    }
    expect(Math.abs(tone.fit!.inharmonicityB / truth.inharmonicityB - 1)).toBeLessThan(5e-4);
  });

  it('goes on past a partial that the hammer’s place has silenced', () => {
    const { tone } = track({ strings: [{ midi: 45, strikePosition: 1 / 7 }], snrDb: 25, seed: 7 });
    const numbers = tone.partials.map((partial) => partial.partialNumber);
    expect(numbers).toContain(6);
    expect(numbers).toContain(8);
  });

  it('stops where the sound is cut off, and never past half the sampling rate', () => {
    for (const sampleRateHz of [11025, 44100]) {
      const { tone } = track({ strings: [{ midi: 72 }], sampleRateHz, snrDb: 50, durationS: 1.2 });
      expect(tone.partials.at(-1)!.hz).toBeLessThan(0.45 * sampleRateHz);
      expect(tone.partials.length).toBeGreaterThan(5);
    }
  });

  it.each([
    { belowDb: 50, numbers: [1, 2, 3, 4, 5] },
    { belowDb: 72, numbers: [1, 2, 3, 4] },
  ])('takes a fifth partial $belowDb dB below the loudest for $numbers', ({ belowDb, numbers }) => {
    const { truth, take } = track({ strings: [{ midi: 76, partialCount: 5 }] });
    const loudest = take.truth.scale * Math.max(...truth.amplitudes);
    const faint = addTone(truth.partialHz[4]!, loudest * 10 ** (-belowDb / 20));
    const { tone } = track({ strings: [{ midi: 76, partialCount: 4 }] }, faint);
    expect(tone.partials.map((partial) => partial.partialNumber)).toEqual(numbers);
  });

  it.each([85, 88, 91])(
    'is not drawn to a tone at twice the first partial of MIDI %s, 10 dB below the second',
    (midi) => {
      const spec = { strings: [{ midi, partialCount: 5 }], snrDb: 45, durationS: 1.2 };
      const { truth, take } = track(spec);
      const double = addTone(2 * truth.partialHz[0]!, 0.3 * take.truth.scale * truth.amplitudes[1]!);
      const second = track(spec, double).tone.partials.find((partial) => partial.partialNumber === 2)!;
      expect(Math.abs(hzToCents(second.hz, truth.partialHz[1]!))).toBeLessThan(0.5);
    },
  );

  it('gives no fit for fewer than three partials', () => {
    const { tone } = track({ strings: [{ midi: 96, partialCount: 2 }], snrDb: 40, durationS: 1.2 });
    expect(tone.partials.map((partial) => partial.partialNumber)).toEqual([1, 2]);
    expect(tone.fit).toBeUndefined();
  });
});
