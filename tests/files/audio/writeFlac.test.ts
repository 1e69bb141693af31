import fc from 'fast-check';
import { expect, it } from 'vitest';
import { frameChecksum, headerChecksum } from '../../../src/files/audio/flacChecksums.ts';
import { decodeTakeSound } from '../../../src/files/audio/takeSound.ts';
import { writeFlac } from '../../../src/files/audio/writeFlac.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const FULL_SCALE = 2 ** 23;
const RUNS = { numRuns: 25, seed: 20260101 };

/** By the decoder that reads other people's files, which knows nothing of our writer. */
async function throughTheDecoder(samples: Int32Array, sampleRateHz = 48000): Promise<Int32Array> {
  const decoded = await decodeTakeSound(writeFlac(samples, sampleRateHz));
  expect(decoded.sampleRateHz).toBe(sampleRateHz);
  return Int32Array.from(decoded.samples, (sample) => sample * FULL_SCALE);
}

const anySample = fc.integer({ min: -FULL_SCALE, max: FULL_SCALE - 1 });
const anySound = fc.oneof(
  fc.array(anySample, { minLength: 1, maxLength: 50 }),
  fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 1, maxLength: 9000 }),
  fc.array(
    fc.integer({ min: -200, max: 200 }).map((value) => value * 256),
    { minLength: 4090, maxLength: 4100 },
  ),
  fc
    .tuple(anySample, fc.integer({ min: 1, max: 5000 }))
    .map(([sample, count]) => new Array<number>(count).fill(sample)),
);

it('gives back every whole number that was written, whatever the sound', async () => {
  await fc.assert(
    fc.asyncProperty(anySound, async (values) => {
      const samples = Int32Array.from(values);
      expect(await throughTheDecoder(samples)).toEqual(samples);
    }),
    RUNS,
  );
});

it.each([
  ['the loudest there is, up and down', (index: number) => (index % 2 === 0 ? FULL_SCALE - 1 : -FULL_SCALE)],
  ['one blow in silence', (index: number) => (index === 4095 ? -FULL_SCALE : 0)],
  ['a tone that grows from nothing', (index: number) => Math.round(index * 400 * Math.sin(index / 7))],
])('gives back %s', async (_, sampleAt) => {
  const samples = Int32Array.from({ length: 9001 }, (_sample, index) => sampleAt(index));
  expect(await throughTheDecoder(samples)).toEqual(samples);
});

// Of files that end so, the decoder package by itself loses the last block.
it('gives back the last block where the third last byte of the file is FF', async () => {
  const { uniform } = seededRandom(7);
  const sounds = Array.from({ length: 4000 }, () => Int32Array.from({ length: 6 }, () => Math.round(9e5 * uniform())));
  const ending = sounds.filter((samples) => writeFlac(samples, 48000).at(-3) === 0xff);
  expect(ending.length).toBeGreaterThan(0);
  for (const samples of ending) expect(await throughTheDecoder(samples)).toEqual(samples);
});

it('numbers its blocks past the first 128', async () => {
  const { normal } = seededRandom(5);
  const samples = Int32Array.from({ length: 150 * 4096 + 7 }, () => Math.round(20 * normal()));
  expect(await throughTheDecoder(samples)).toEqual(samples);
});

it.each([22050, 44100, 47999, 96000, 192000])('states a rate of %i Hz', async (sampleRateHz) => {
  const samples = Int32Array.of(5, -4, 3);
  expect(await throughTheDecoder(samples, sampleRateHz)).toEqual(samples);
});

it('refuses a rate that a frame cannot state', () => {
  for (const sampleRateHz of [0, 44100.5, 70000])
    expect(() => writeFlac(Int32Array.of(1), sampleRateHz)).toThrow(/sampleRateHz must be .* got/);
});

it('needs fewer bits where a device left the lowest ones unused', () => {
  const { normal } = seededRandom(6);
  const coarse = Int32Array.from({ length: 8192 }, () => Math.round(100 * normal()));
  const shifted = coarse.map((sample) => sample * 256);
  expect(writeFlac(shifted, 48000).length).toBeLessThan(1.01 * writeFlac(coarse, 48000).length);
});

// The check values of CRC-8 (polynomial 0x07) and CRC-16 (0x8005, neither side mirrored) over the digits 1 to 9, as the
// catalogue of parametrised CRC algorithms by G. Cook lists them: "CRC-8/SMBUS" F4 and "CRC-16/UMTS" FEE8.
it('sums its checksums as the catalogue does', () => {
  const digits = Uint8Array.from('123456789', (digit) => digit.charCodeAt(0));
  expect(headerChecksum(digits)).toBe(0xf4);
  expect(frameChecksum(digits)).toBe(0xfee8);
});
