import { describe, expect, it } from 'vitest';
import { writeWave } from '../../../src/files/audio/writeWave.ts';
import { bytesOf, u16, u32 } from '../../support/handWrittenBytes.ts';
import { readSound } from './readSound.ts';

const SAMPLES = Float32Array.of(0.5, -1, 0, 2 ** -15);

describe('writeWave', () => {
  it('writes 16-bit samples as the format defines them', () => {
    const expected = bytesOf(
      ...['RIFF', u32(44), 'WAVE', 'fmt ', u32(16), u16(1), u16(1), u32(44100), u32(88200), u16(2), u16(16)],
      ...['data', u32(8), [0x00, 0x40, 0x00, 0x80, 0x00, 0x00, 0x01, 0x00]],
    );
    expect(writeWave(SAMPLES, 44100, '16-bit')).toEqual(expected);
  });

  it('writes floating point with its fact chunk', () => {
    const expected = bytesOf(
      ...['RIFF', u32(66), 'WAVE', 'fmt ', u32(18), u16(3), u16(1), u32(48000), u32(192000), u16(4), u16(32), u16(0)],
      ...['fact', u32(4), u32(4), 'data', u32(16)],
      ...[
        [0, 0, 0, 0x3f],
        [0, 0, 0x80, 0xbf],
        [0, 0, 0, 0],
        [0, 0, 0, 0x38],
      ],
    );
    expect(writeWave(SAMPLES, 48000, 'float')).toEqual(expected);
  });

  it.each(['16-bit', 'float'] as const)('is read back as it was written (%s)', async (width) => {
    const { samples, warnings } = await readSound(writeWave(SAMPLES, 22050, width));
    expect(samples).toEqual([...SAMPLES]);
    expect(warnings).toEqual([]);
  });

  it('holds 16-bit samples at full scale and keeps floating point beyond it', async () => {
    const loud = Float32Array.of(1.5, -1.5, 1);
    expect((await readSound(writeWave(loud, 48000, '16-bit'))).samples).toEqual([1 - 2 ** -15, -1, 1 - 2 ** -15]);
    expect((await readSound(writeWave(loud, 48000, 'float'))).samples).toEqual([1.5, -1.5, 1]);
  });

  it.each([0, -1, 44100.5, Number.NaN])('refuses a sample rate of %s', (rateHz) => {
    expect(() => writeWave(SAMPLES, rateHz, 'float')).toThrow(/sampleRateHz/);
  });
});
