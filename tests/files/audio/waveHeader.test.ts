import { describe, expect, it } from 'vitest';
import { openAudio } from '../../../src/files/audio/openAudio.ts';
import { bytesOf, chunk, formatBody, type Piece, riff, u32 } from '../../support/handWrittenBytes.ts';
import { readSound } from './readSound.ts';

const FORMAT = chunk('fmt ', formatBody());
const DATA = [0x00, 0x40, 0x00, 0xc0]; // 0.5, −0.5
const SOUND = [0.5, -0.5];

describe('chunks around the sound', () => {
  it.each([
    ['before the format', riff(chunk('LIST', 'INFOsome text'), FORMAT, chunk('data', DATA))],
    ['of odd length, with their padding', riff(FORMAT, chunk('bext', 'abc'), chunk('cue ', 'x'), chunk('data', DATA))],
    ['after the sound', riff(FORMAT, chunk('data', DATA), chunk('LIST', 'INFO'))],
    ['with letters unknown to anybody', riff(chunk('\x01zzz', [1, 2, 3]), FORMAT, chunk('data', DATA))],
    ['of length 0', riff(chunk('JUNK', ''), FORMAT, chunk('data', DATA))],
    ['in a longer format chunk', riff(chunk('fmt ', [...formatBody(), 0, 0]), chunk('data', DATA))],
  ])('%s do no harm', async (_, file) => {
    expect(await readSound(file)).toMatchObject({ samples: SOUND, warnings: [] });
  });

  it.each([22050, 32000, 44100, 48000, 88200, 96000, 176400, 192000])('reads a rate of %i Hz', async (rateHz) => {
    const { audio } = await readSound(riff(chunk('fmt ', formatBody({ rateHz })), chunk('data', DATA)));
    expect(audio.sampleRateHz).toBe(rateHz);
  });

  it('does not mind a wrong length of the whole', async () => {
    for (const length of [0, 4, 0xffffffff])
      expect(await readSound(bytesOf('RIFF', u32(length), 'WAVE', FORMAT, chunk('data', DATA)))).toMatchObject({
        samples: SOUND,
        warnings: [],
      });
  });
});

describe('a length of the sound that cannot be right', () => {
  const file = (length: number, ...rest: Piece[]) =>
    bytesOf('RIFF', u32(0), 'WAVE', FORMAT, 'data', u32(length), ...rest);

  it.each([0, 0xffffffff, 0x7ffff024])('%i is a recorder that never finished: all is read', async (length) => {
    expect(await readSound(file(length, DATA))).toMatchObject({ samples: SOUND, warnings: ['length-not-stated'] });
  });

  it('longer than the file is a file cut short: what is there is read', async () => {
    expect(await readSound(file(1000, DATA))).toMatchObject({ samples: SOUND, warnings: ['truncated'] });
  });

  it('drops half a sample at the end', async () => {
    expect(await readSound(file(1000, DATA, [0x7f]))).toMatchObject({ samples: SOUND, warnings: ['truncated'] });
    expect((await readSound(file(5, DATA, [0x7f]))).samples).toEqual(SOUND);
  });

  it('0 before another chunk means no sound', async () => {
    const outcome = await openAudio({
      byteCount: 52,
      read: async (offset, length) => file(0, chunk('LIST', '')).subarray(offset, offset + length),
    });
    expect(outcome).toMatchObject({ opened: false, fault: { reason: 'no-audio-data' } });
  });
});

describe('RF64, for files above 4 GiB', () => {
  it('takes the length from its own chunk', async () => {
    const sizes = chunk('ds64', bytesOf(u32(100), u32(0), u32(4), u32(0), u32(2), u32(0), u32(0)));
    const file = bytesOf(
      'RF64',
      u32(0xffffffff),
      'WAVE',
      sizes,
      FORMAT,
      'data',
      u32(0xffffffff),
      DATA,
      chunk('LIST', 'INFO'),
    );
    expect(await readSound(file)).toMatchObject({ samples: SOUND, warnings: [] });
  });

  it('without that chunk is read to its end', async () => {
    const file = bytesOf('RF64', u32(0xffffffff), 'WAVE', FORMAT, 'data', u32(0xffffffff), DATA);
    expect(await readSound(file)).toMatchObject({ samples: SOUND, warnings: ['length-not-stated'] });
  });
});

it('reads a recording far larger than memory in small pieces', async () => {
  const dataBytes = 6 * 2 ** 30;
  const sizes = chunk('ds64', bytesOf(u32(0), u32(2), u32(dataBytes % 2 ** 32), u32(1), u32(0), u32(0), u32(0)));
  const head = bytesOf('RF64', u32(0xffffffff), 'WAVE', sizes, FORMAT, 'data', u32(0xffffffff));
  let largestRead = 0;
  const outcome = await openAudio({
    byteCount: head.length + dataBytes,
    read: async (offset, length) => {
      largestRead = Math.max(largestRead, length);
      return offset < head.length ? head.subarray(offset, offset + length) : new Uint8Array(length).fill(0x20);
    },
  });
  if (!outcome.opened) throw new Error(outcome.fault.message);
  expect(outcome.audio.statedDurationS).toBe(dataBytes / 2 / 48000);
  let blockCount = 0;
  for await (const block of outcome.audio.blocks()) {
    expect(block[0]).toBeCloseTo(0x2020 / 2 ** 15, 6);
    blockCount += 1;
    if (blockCount === 3) break;
  }
  expect(blockCount).toBe(3);
  expect(largestRead).toBeLessThanOrEqual(2 ** 24);
});

it('says when the file becomes shorter while it is read', async () => {
  const file = riff(FORMAT, chunk('data', Array(400).fill(0x40)));
  const outcome = await openAudio({
    byteCount: file.length,
    read: async (offset, length) => file.subarray(offset, Math.min(offset + length, 244)),
  });
  if (!outcome.opened) throw new Error(outcome.fault.message);
  const blocks: Float32Array[] = [];
  for await (const block of outcome.audio.blocks()) blocks.push(block);
  expect(blocks.map((block) => block.length)).toEqual([100]);
  expect(outcome.audio.warnings.map(({ kind }) => kind)).toEqual(['truncated']);
});

it('reads a file of a thousand channels without asking for more than 16 MiB at once', async () => {
  const channelCount = 1000;
  const format = chunk('fmt ', formatBody({ channelCount, bitCount: 32, code: 3 }));
  const dataBytes = 2 ** 28;
  const head = bytesOf('RIFF', u32(0), 'WAVE', format, 'data', u32(dataBytes));
  let largestRead = 0;
  const outcome = await openAudio({
    byteCount: head.length + dataBytes,
    read: async (offset, length) => {
      largestRead = Math.max(largestRead, length);
      return offset < head.length ? head.subarray(offset, offset + length) : new Uint8Array(length);
    },
  });
  if (!outcome.opened) throw new Error(outcome.fault.message);
  const first = await outcome.audio.blocks()[Symbol.asyncIterator]().next();
  expect(first.value?.length).toBeGreaterThan(0);
  expect(largestRead).toBeLessThanOrEqual(2 ** 24);
});
