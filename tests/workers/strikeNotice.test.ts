import { expect, it } from 'vitest';
import { createStrikeNotice } from '../../src/workers/strikeNotice.ts';
import { seededRandom } from '../support/seededRandom.ts';

const SAMPLE_RATE_HZ = 44100;

/** Tones that die away, struck at the given times, over room noise of about -70 dBFS. */
function struckAt(timesS: readonly number[], levelDbfs: number): Float32Array {
  const random = seededRandom(3);
  return Float32Array.from({ length: 5 * SAMPLE_RATE_HZ }, (_, i) => {
    const timeS = i / SAMPLE_RATE_HZ;
    const tones = timesS
      .filter((struckS) => timeS >= struckS)
      .map((struckS) => Math.exp(-3 * (timeS - struckS)) * Math.sin(2 * Math.PI * 330 * (timeS - struckS)));
    return 10 ** (levelDbfs / 20) * tones.reduce((sum, tone) => sum + tone, 0) + 2e-4 * random.normal();
  });
}

it.each([-10, -35])('notices each strike at %i dBFS within 20 ms, in blocks', (levelDbfs) => {
  const samples = struckAt([1, 2.5, 4], levelDbfs);
  const notice = createStrikeNotice(SAMPLE_RATE_HZ);
  const timesS: number[] = [];
  for (let from = 0; from < samples.length; from += 2048)
    for (const index of notice.push(samples.subarray(from, from + 2048), -70))
      timesS.push((from + index) / SAMPLE_RATE_HZ);
  expect(timesS).toHaveLength(3);
  for (const [index, struckS] of [1, 2.5, 4].entries()) {
    expect(timesS[index]).toBeGreaterThanOrEqual(struckS);
    expect(timesS[index]).toBeLessThan(struckS + 0.02);
  }
});

it('notices nothing in the room alone', () => {
  expect(createStrikeNotice(SAMPLE_RATE_HZ).push(struckAt([], 0), null)).toEqual([]);
});
