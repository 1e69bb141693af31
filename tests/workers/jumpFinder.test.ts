import { describe, expect, it } from 'vitest';
import { findJumps } from '../../src/workers/jumpFinder.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { synthesizeNote } from '../support/syntheticString.ts';

const SAMPLE_RATE_HZ = 44100;
/** The strike is at 0.1 s; in the treble the measuring begins 10 ms after it. */
const FROM = Math.round(0.12 * SAMPLE_RATE_HZ);

const take = (midi: number, snrDb: number, knockAtS?: number) =>
  synthesizeNote({
    strings: [{ midi }, { midi, offsetCents: 1.5 }],
    durationS: 3,
    sampleRateHz: SAMPLE_RATE_HZ,
    snrDb,
    hammerNoiseDb: -15,
    seed: midi,
    ...(knockAtS !== undefined && { knock: { atS: knockAtS, levelDb: -20 } }),
  }).samples;

function withoutStretch(samples: Float32Array, at: number, count: number): Float32Array {
  const shorter = new Float32Array(samples.length - count);
  shorter.set(samples.subarray(0, at));
  shorter.set(samples.subarray(at + count), at);
  return shorter;
}

describe('findJumps', () => {
  // A stretch that happens to be nearly a whole number of periods long leaves hardly a jump, and falsifies hardly anything.
  it.each([21, 33, 45, 57, 69, 81, 93])(
    'finds where 10 ms were dropped from note %i, nearly always, and nothing else',
    (midi) => {
      const random = seededRandom(midi);
      const whole = take(midi, 50);
      let foundCount = 0;
      for (let trial = 0; trial < 10; trial += 1) {
        const at = Math.round((0.15 + random.uniform() * 0.85) * SAMPLE_RATE_HZ);
        const jumps = findJumps(withoutStretch(whole, at, 441), FROM);
        foundCount += jumps.length;
        for (const jump of jumps) expect(Math.abs(jump - at)).toBeLessThan(64);
      }
      expect(foundCount).toBeGreaterThanOrEqual(9);
      expect(foundCount).toBeLessThanOrEqual(10);
    },
  );

  it.each([21, 33, 45, 57, 69, 81, 93, 105])('finds none in note %i when nothing was dropped', (midi) => {
    for (const snrDb of [10, 30, 60]) expect(findJumps(take(midi, snrDb), FROM)).toEqual([]);
  });

  it('takes a knock for no jump', () => {
    for (const midi of [33, 57, 69]) expect(findJumps(take(midi, 50, 1.2), FROM)).toEqual([]);
  });

  it('finds each of two jumps', () => {
    const once = withoutStretch(take(60, 50), 60_000, 441);
    expect(findJumps(withoutStretch(once, 30_000, 882), FROM)).toHaveLength(2);
  });

  it('has nothing to find in digital silence', () => {
    expect(findJumps(new Float32Array(50_000), 0)).toEqual([]);
  });
});
