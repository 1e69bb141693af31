import { describe, expect, it } from 'vitest';
import { newId, uuidFromBytes } from '../../src/records/newId.ts';

const UUID_4 = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

describe('newId', () => {
  it('is a random UUID, never the same twice', () => {
    const ids = Array.from({ length: 1000 }, () => newId());
    expect(new Set(ids).size).toBe(1000);
    for (const id of ids) expect(id).toMatch(UUID_4);
  });

  it('is one where the page has no randomUUID', () => {
    const getRandomValues = crypto.getRandomValues.bind(crypto);
    const [one, two] = [newId({ getRandomValues }), newId({ getRandomValues })];
    expect(one).toMatch(UUID_4);
    expect(one).not.toBe(two);
  });
});

describe('uuidFromBytes', () => {
  it('sets version and variant and leaves the other bits', () => {
    // Bytes 00 … 0f: the seventh, 06, becomes 46; the ninth, 08, becomes 88 (RFC 9562: version 4, variant 10).
    const bytes = Uint8Array.from({ length: 16 }, (_, index) => index);
    expect(uuidFromBytes(bytes)).toBe('00010203-0405-4607-8809-0a0b0c0d0e0f');
    expect(uuidFromBytes(new Uint8Array(16).fill(255))).toBe('ffffffff-ffff-4fff-bfff-ffffffffffff');
  });

  it('refuses any other length', () => {
    expect(() => uuidFromBytes(new Uint8Array(15))).toThrow(/16 long, got 15/);
  });
});
