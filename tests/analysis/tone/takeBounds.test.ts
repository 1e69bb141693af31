import { describe, expect, it } from 'vitest';
import { findRelease, findStrike, skipAfterStrikeS } from '../../../src/analysis/tone/takeBounds.ts';
import { typicalDecayTimeS } from '../../support/typicalPiano.ts';
import { RATE_HZ, takeOf } from '../takes.ts';

describe('findStrike', () => {
  it.each([
    { midi: 21, snrDb: 20, leadS: 0.4 },
    { midi: 40, snrDb: 40, leadS: 0.3 },
    { midi: 69, snrDb: 10, leadS: 1 },
    { midi: 100, snrDb: 30, leadS: 0.5 },
    { midi: 108, snrDb: 15, leadS: 0.3 },
    { midi: 60, snrDb: 40, leadS: 0.02 },
  ])('finds the strike of MIDI $midi at $snrDb dB after $leadS s', ({ midi, snrDb, leadS }) => {
    for (const seed of [1, 2, 3]) {
      const { samples, truth } = takeOf({ strings: [{ midi }], snrDb, leadS, hammerNoiseDb: -20, seed });
      // Frames of 5 ms, and a bass tone that swells up over its first few milliseconds.
      const lateS = findStrike(samples, RATE_HZ)! / RATE_HZ - truth.onsetS;
      expect(lateS).toBeGreaterThan(-0.006);
      expect(lateS).toBeLessThan(0.021);
    }
  });

  it.each([
    { midi: 36, leadS: 0.3, durationS: 1.5 },
    { midi: 28, leadS: 0.1, durationS: 2 },
  ])('finds the strike of MIDI $midi after a lead of $leadS s in $durationS s', ({ midi, leadS, durationS }) => {
    // A slow tone that is hardly softer at its end, and less than a fifth of the recording before it.
    const { samples, truth } = takeOf({ strings: [{ midi }], leadS, durationS, snrDb: 40 });
    expect(Math.abs(findStrike(samples, RATE_HZ)! / RATE_HZ - truth.onsetS)).toBeLessThan(0.021);
  });

  it('finds the start where there is no lead', () => {
    const { samples } = takeOf({ strings: [{ midi: 60 }], leadS: 0, snrDb: 40 });
    expect(findStrike(samples, RATE_HZ)! / RATE_HZ).toBeLessThan(0.01);
  });

  it('does not depend on the level, and moves with the sound', () => {
    const { samples } = takeOf({ strings: [{ midi: 60 }], snrDb: 30 });
    const onset = findStrike(samples, RATE_HZ)!;
    expect(
      findStrike(
        samples.map((value) => value / 1024),
        RATE_HZ,
      ),
    ).toBe(onset);
    // 110 samples are one frame of 5 ms.
    const later = new Float32Array(samples.length + 1100);
    later.set(samples, 1100);
    expect(Math.abs(findStrike(later, RATE_HZ)! - onset - 1100)).toBeLessThanOrEqual(110);
  });

  it('is undefined in digital silence', () => {
    expect(findStrike(new Float32Array(RATE_HZ), RATE_HZ)).toBeUndefined();
    expect(findStrike(new Float32Array(0), RATE_HZ)).toBeUndefined();
  });
});

describe('findRelease', () => {
  const releaseOf = (take: ReturnType<typeof takeOf>) =>
    findRelease(take.samples, take.truth.onsetIndex, take.samples.length, RATE_HZ) - take.truth.onsetIndex;

  it.each([24, 36, 48, 60, 72, 84])('finds the damper of MIDI %s, not much before it falls and never after', (midi) => {
    // While the tone still stands well above the noise.
    const releaseAtS = midi > 66 ? 0.5 : 1.4;
    for (const snrDb of [25, 50]) {
      const take = takeOf({ strings: [{ midi }], releaseAtS, durationS: 3, snrDb, seed: midi });
      const releaseS = releaseOf(take) / RATE_HZ;
      expect(releaseS).toBeGreaterThan(releaseAtS - 0.2);
      // The damper needs a while in the bass: 0.7 s for 60 dB at A0.
      expect(releaseS).toBeLessThan(releaseAtS + (midi < 40 ? 0.1 : 0.02));
    }
  });

  it.each([21, 45, 69, 88, 100, 108])('sees no damper where MIDI %s dies by itself', (midi) => {
    for (const snrDb of [15, 30, 50]) {
      const durationS = Math.min(3, 0.3 + 1.5 * typicalDecayTimeS(midi));
      const take = takeOf({ strings: [{ midi }], durationS, snrDb, seed: midi });
      expect(releaseOf(take)).toBe(take.samples.length - take.truth.onsetIndex);
    }
  });

  it.each([0.7, 2, 5, 9])('takes the trough of a deep beat of %s Hz for no damper', (splitHz) => {
    const falseBeats = [1, 2, 3, 4, 5].map((partialNumber) => ({ partialNumber, splitHz, ratio: 0.95 }));
    const take = takeOf({ strings: [{ midi: 64, falseBeats, partialCount: 5 }], durationS: 3, snrDb: 40 });
    expect(releaseOf(take)).toBe(take.samples.length - take.truth.onsetIndex);
  });

  it.each([
    { midi: 79, cents: 5 },
    { midi: 84, cents: -5 },
    { midi: 84, cents: 4 },
    { midi: 88, cents: 5 },
  ])('takes the first trough of an open unison for no damper: MIDI $midi, $cents cents', ({ midi, cents }) => {
    for (const seed of [1, 2, 84]) {
      const take = takeOf({ strings: [{ midi }, { midi, offsetCents: cents }], durationS: 3, snrDb: 40, seed });
      expect(releaseOf(take)).toBe(take.samples.length - take.truth.onsetIndex);
    }
  });

  it('takes a two-stage decay for no damper', () => {
    const aftersound = { ratio: 0.1, slowDownFactor: 6 };
    const take = takeOf({ strings: [{ midi: 72, decayTimeS: 1.2, aftersound }], durationS: 3, snrDb: 50 });
    expect(releaseOf(take)).toBe(take.samples.length - take.truth.onsetIndex);
  });
});

it('skipAfterStrikeS is six periods, within 8 and 120 ms', () => {
  expect(skipAfterStrikeS(440)).toBeCloseTo(6 / 440, 12);
  expect(skipAfterStrikeS(27.5)).toBe(0.12);
  expect(skipAfterStrikeS(4186)).toBe(0.008);
});
