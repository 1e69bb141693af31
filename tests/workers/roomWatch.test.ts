import { expect, it } from 'vitest';
import { createRoomWatch } from '../../src/workers/roomWatch.ts';
import { seededRandom } from '../support/seededRandom.ts';

const RATE_HZ = 16000;
const BLOCK = 2000;

/** Blocks of noise; `loud` is played where the second lies in it, and told as struck at its beginning. */
function told(watch: ReturnType<typeof createRoomWatch>, durationS: number, loud?: { fromS: number; toS: number }) {
  const { normal } = seededRandom(4);
  const tellings: { atS: number; noiseDbfs: number }[] = [];
  for (let at = 0; at < durationS * RATE_HZ; at += BLOCK) {
    const timeS = at / RATE_HZ;
    const isLoud = loud !== undefined && timeS >= loud.fromS && timeS < loud.toS;
    const samples = Float32Array.from({ length: BLOCK }, () => (isLoud ? 0.1 : 0.0005) * normal());
    const quiet = watch.push(samples, isLoud && timeS === loud.fromS);
    if (quiet) tellings.push({ atS: timeS, noiseDbfs: quiet.noiseDbfs });
  }
  return tellings;
}

it('tells the room every two seconds of quiet', () => {
  const tellings = told(createRoomWatch(RATE_HZ), 7);
  expect(tellings).toHaveLength(3);
  for (const { noiseDbfs } of tellings) expect(Math.abs(noiseDbfs + 63)).toBeLessThan(0.5);
});

it('leaves out what is struck and what sounds on', () => {
  const tellings = told(createRoomWatch(RATE_HZ), 12, { fromS: 1, toS: 4 });
  expect(tellings.length).toBeGreaterThan(1);
  for (const { noiseDbfs } of tellings) expect(Math.abs(noiseDbfs + 63)).toBeLessThan(0.5);
});

it('tells nothing after its end', () => {
  const watch = createRoomWatch(RATE_HZ);
  watch.end();
  expect(told(watch, 5)).toEqual([]);
});
