import { expect, it } from 'vitest';
import { dataUri } from '../../src/files/dataUri.ts';

it.each([0, 1, 2, 3, 4, 24_575, 24_576, 24_577, 50_000])('writes %i bytes as Node’s own base64 does', (length) => {
  const bytes = Uint8Array.from({ length }, (_, index) => (index * 151 + 7) % 256);
  expect(dataUri('image/png', bytes)).toBe(`data:image/png;base64,${Buffer.from(bytes).toString('base64')}`);
});
