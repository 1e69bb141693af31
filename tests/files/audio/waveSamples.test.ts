import { describe, expect, it } from 'vitest';
import { bytesOf, chunk, extensibleBody, type FormatClaims, formatBody, riff } from '../../support/handWrittenBytes.ts';
import { readSound } from './readSound.ts';

// Each row: four samples that are −1, −0.5, 0 and 0.5 of full scale, written down byte by byte from the definition of
// two's complement (8-bit: offset binary) and of IEEE 754.
const WIDTHS: readonly (FormatClaims & { readonly what: string; readonly data: readonly number[] })[] = [
  { what: '8-bit', code: 1, bitCount: 8, data: [0x00, 0x40, 0x80, 0xc0] },
  { what: '16-bit', code: 1, bitCount: 16, data: [0x00, 0x80, 0x00, 0xc0, 0x00, 0x00, 0x00, 0x40] },
  {
    what: '24-bit',
    code: 1,
    bitCount: 24,
    data: [0x00, 0x00, 0x80, 0x00, 0x00, 0xc0, 0x00, 0x00, 0x00, 0x00, 0x00, 0x40],
  },
  {
    what: '32-bit',
    code: 1,
    bitCount: 32,
    data: [0, 0, 0, 0x80, 0, 0, 0, 0xc0, 0, 0, 0, 0, 0, 0, 0, 0x40],
  },
  {
    what: '32-bit floating point',
    code: 3,
    bitCount: 32,
    data: [0, 0, 0x80, 0xbf, 0, 0, 0, 0xbf, 0, 0, 0, 0, 0, 0, 0, 0x3f],
  },
  {
    what: '64-bit floating point',
    code: 3,
    bitCount: 64,
    data: [
      ...[0, 0, 0, 0, 0, 0, 0xf0, 0xbf],
      ...[0, 0, 0, 0, 0, 0, 0xe0, 0xbf],
      ...Array(8).fill(0),
      ...[0, 0, 0, 0, 0, 0, 0xe0, 0x3f],
    ],
  },
];

describe.each(WIDTHS)('$what samples', ({ data, ...claims }) => {
  const sounds = [-1, -0.5, 0, 0.5];

  it('are read at their place between −1 and 1', async () => {
    const { samples, audio, warnings } = await readSound(riff(chunk('fmt ', formatBody(claims)), chunk('data', data)));
    expect(samples).toEqual(sounds);
    expect(audio).toMatchObject({ format: 'WAV', sampleRateHz: 48000, channelCount: 1, statedDurationS: 4 / 48000 });
    expect(warnings).toEqual([]);
  });

  it('are read in the extended format too', async () => {
    const file = riff(chunk('fmt ', extensibleBody(claims.code ?? 1, claims)), chunk('data', data));
    expect((await readSound(file)).samples).toEqual(sounds);
  });

  it('of two channels become their mean, and it is said', async () => {
    const file = riff(chunk('fmt ', formatBody({ ...claims, channelCount: 2 })), chunk('data', data));
    const { samples, audio, warnings } = await readSound(file);
    expect(samples).toEqual([-0.75, 0.25]);
    expect(audio.channelCount).toBe(2);
    expect(warnings).toEqual(['mixed-to-mono']);
  });
});

it('tells the smallest steps apart', async () => {
  const smallest = async (claims: FormatClaims, data: number[]) =>
    (await readSound(riff(chunk('fmt ', formatBody(claims)), chunk('data', data)))).samples;
  expect(await smallest({ bitCount: 8 }, [0x81, 0x7f])).toEqual([2 ** -7, -(2 ** -7)]);
  expect(await smallest({ bitCount: 16 }, [0x01, 0x00, 0xff, 0xff])).toEqual([2 ** -15, -(2 ** -15)]);
  expect(await smallest({ bitCount: 24 }, [0x01, 0x00, 0x00, 0xff, 0xff, 0xff])).toEqual([2 ** -23, -(2 ** -23)]);
  expect(await smallest({ bitCount: 24 }, [0x34, 0x12, 0x00])).toEqual([0x1234 * 2 ** -23]);
});

it('reads 24 bits in four bytes and 20 bits in three, which stand at the top', async () => {
  const wide = extensibleBody(1, { bitCount: 32, validBits: 24 });
  expect((await readSound(riff(chunk('fmt ', wide), chunk('data', [0, 0, 0, 0x40])))).samples).toEqual([0.5]);
  const odd = formatBody({ bitCount: 20, frameBytes: 3 });
  expect((await readSound(riff(chunk('fmt ', odd), chunk('data', [0, 0, 0xc0])))).samples).toEqual([-0.5]);
});

it('takes samples that are no numbers as silence, and says so', async () => {
  const data = bytesOf([0, 0, 0xc0, 0x7f], [0, 0, 0x80, 0x7f], [0, 0, 0, 0x3f]); // NaN, infinity, 0.5
  const file = riff(chunk('fmt ', formatBody({ code: 3, bitCount: 32 })), chunk('data', data));
  expect(await readSound(file)).toMatchObject({ samples: [0, 0, 0.5], warnings: ['not-a-number'] });
});

it('takes 64-bit samples beyond what 32 bits hold as silence', async () => {
  const data = [0, 0, 0, 0, 0, 0, 0xf0, 0x7e]; // about 1e+303
  const file = riff(chunk('fmt ', formatBody({ code: 3, bitCount: 64 })), chunk('data', data));
  expect(await readSound(file)).toMatchObject({ samples: [0], warnings: ['not-a-number'] });
});
