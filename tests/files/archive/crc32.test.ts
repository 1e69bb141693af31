import { crc32 as nodeCrc32 } from 'node:zlib';
import { expect, it } from 'vitest';
import { crc32 } from '../../../src/files/archive/crc32.ts';
import { seededRandom } from '../../support/seededRandom.ts';

it('is the checksum of the published check value', () => {
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926); // ITU-T V.42's polynomial, reflected
});

it('is that of Node for every length and in pieces', () => {
  const { uniform } = seededRandom(20_260_401);
  const bytes = Uint8Array.from({ length: 300 }, () => Math.floor(256 * uniform()));
  for (let length = 0; length <= bytes.length; length++) {
    const whole = bytes.subarray(0, length);
    const cut = Math.floor(length * uniform());
    expect(crc32(whole)).toBe(nodeCrc32(whole));
    expect(crc32(whole.subarray(cut), crc32(whole.subarray(0, cut)))).toBe(nodeCrc32(whole));
  }
});
