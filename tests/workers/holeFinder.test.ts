import { describe, expect, it } from 'vitest';
import { createHoleFinder } from '../../src/workers/holeFinder.ts';
import { seededRandom } from '../support/seededRandom.ts';

const SAMPLE_RATE_HZ = 44100;
const BLOCK = 2048;

/** A decaying tone over room noise, rounded to 16 bits as a converter gives it. */
function soundingTake(levelDbfs: number, seconds = 1): Float32Array {
  const random = seededRandom(7);
  const amplitude = 10 ** (levelDbfs / 20);
  return Float32Array.from({ length: Math.round(seconds * SAMPLE_RATE_HZ) }, (_, i) => {
    const timeS = i / SAMPLE_RATE_HZ;
    const tone = amplitude * Math.exp(-timeS) * Math.sin(2 * Math.PI * 220 * timeS);
    return Math.round((tone + 3e-5 * random.normal()) * 32768) / 32768;
  });
}

function findIn(samples: Float32Array, roomLevelDbfs: number | null = -88) {
  const finder = createHoleFinder(SAMPLE_RATE_HZ);
  const found: { start: number; sampleCount: number }[] = [];
  for (let from = 0; from < samples.length; from += BLOCK) {
    for (const run of finder.push(samples.subarray(from, from + BLOCK), roomLevelDbfs))
      found.push({ start: from + run.endIndex - run.sampleCount, sampleCount: run.sampleCount });
  }
  return found;
}

/** A hole as a device makes it: zeros put in, the sound goes on where it stopped. */
function withZerosAt(samples: Float32Array, at: number, count: number): Float32Array {
  const holed = new Float32Array(samples.length + count);
  holed.set(samples.subarray(0, at));
  holed.set(samples.subarray(at), at + count);
  return holed;
}

describe('createHoleFinder', () => {
  it.each([
    ['inside a block', 10_000, 441],
    ['across a block border', 5 * BLOCK - 100, 441],
    ['longer than a block', 9_000, 3 * BLOCK],
    ['of one 3 ms buffer', 10_000, 133],
  ])('finds zeros %s, where they are', (_, at, count) => {
    const found = findIn(withZerosAt(soundingTake(-20), at, count));
    expect(found).toHaveLength(1);
    // A sample next to the hole may itself be zero.
    expect(Math.abs((found[0]?.start ?? 0) - at)).toBeLessThan(5);
    expect(Math.abs((found[0]?.sampleCount ?? 0) - count)).toBeLessThan(5);
  });

  it('finds each of several holes', () => {
    const once = withZerosAt(soundingTake(-20), 30_000, 441);
    expect(findIn(withZerosAt(once, 8_000, 441))).toHaveLength(2);
  });

  it.each([-6, -40, -70, -85])('finds none in an unbroken 16-bit take that starts at %i dBFS', (levelDbfs) => {
    expect(findIn(soundingTake(levelDbfs, 3))).toEqual([]);
  });

  it('takes a gate that closes on the quiet room for what it is', () => {
    expect(findIn(withZerosAt(soundingTake(-100), 10_000, 4410), -88)).toEqual([]);
  });

  it('takes sound that stopped for longer than half a second as an end', () => {
    expect(findIn(withZerosAt(soundingTake(-20), 10_000, 30_000))).toEqual([]);
  });

  it('does not wait for the room level to be known', () => {
    expect(findIn(withZerosAt(soundingTake(-20), 10_000, 441), null)).toHaveLength(1);
  });

  it('leaves the zeros before the first sound alone', () => {
    expect(findIn(withZerosAt(soundingTake(-20), 0, 3_400))).toEqual([]);
  });
});
