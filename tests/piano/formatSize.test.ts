import { expect, it } from 'vitest';
import { formatSize } from '../../src/piano/formatSize.ts';

it.each([
  [0, '0 bytes'],
  [999, '999 bytes'],
  [1000, '1.0 kB'],
  [54_202, '54 kB'],
  [999_600, '1.0 MB'],
  [3_840_000, '3.8 MB'],
  [31_400_000, '31 MB'],
  [2_500_000_000, '2.5 GB'],
])('writes %i as %s', (byteCount, text) => {
  expect(formatSize(byteCount).replace('\u00a0', ' ')).toBe(text);
});
