/** The format chunk of a WAV file: rate, channels and how a sample is coded. */
import { faulty } from './audioStream.ts';

/** How one sample of one channel is written, little-endian. 8-bit samples are unsigned, wider integers signed. */
export type SampleCoding = { readonly kind: 'integer' | 'float'; readonly byteCount: number };

export type WaveFormat = {
  readonly opened: true;
  readonly coding: SampleCoding;
  readonly sampleRateHz: number;
  readonly channelCount: number;
  readonly frameBytes: number;
};

const INTEGER = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;

/** Registered format numbers that turn up in practice (Microsoft's mmreg.h). */
const OTHER_CODECS: Readonly<Record<number, string>> = {
  2: 'Microsoft ADPCM',
  6: 'A-law',
  7: 'µ-law',
  17: 'IMA ADPCM',
  49: 'GSM 6.10',
  80: 'MPEG layer 1 or 2',
  85: 'MPEG layer 3',
  353: 'Windows Media Audio',
};

/** Bytes 4–15 of the sub-format of WAVE_FORMAT_EXTENSIBLE whose first bytes are an ordinary format number. */
const EXTENSIBLE_TAIL = [0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];

/** @param chunk the format chunk's body, up to 40 bytes of it. */
export function waveFormat(chunk: Uint8Array): WaveFormat | ReturnType<typeof faulty> {
  if (chunk.length < 16)
    return faulty('damaged-header', `it is a WAV file whose format chunk is cut short (${chunk.length} of 16 bytes)`);
  const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.byteLength);
  const code = formatNumber(view, chunk);
  if (code === undefined)
    return faulty(
      'unsupported-codec',
      'it is a WAV file in an extended format that is neither whole numbers nor floating point',
    );
  if (code !== INTEGER && code !== FLOAT) {
    const name = OTHER_CODECS[code] ?? `format number ${code}`;
    return faulty('unsupported-codec', `it is a WAV file coded as ${name}; save it as plain (PCM) WAV or as FLAC`);
  }
  const channelCount = view.getUint16(2, true);
  const sampleRateHz = view.getUint32(4, true);
  const bitCount = view.getUint16(14, true);
  if (channelCount === 0) return faulty('damaged-header', 'it is a WAV file that claims to have no channels');
  return withWidth({
    isFloat: code === FLOAT,
    channelCount,
    sampleRateHz,
    bitCount,
    frameBytes: view.getUint16(12, true),
  });
}

type Claims = {
  readonly isFloat: boolean;
  readonly channelCount: number;
  readonly sampleRateHz: number;
  readonly bitCount: number;
  readonly frameBytes: number;
};

/** The container's width comes from the frame's length: 24 bits may sit in four bytes, 20 bits in three, at the top. */
function withWidth(claims: Claims): WaveFormat | ReturnType<typeof faulty> {
  const { isFloat, channelCount, sampleRateHz, bitCount } = claims;
  const byteCount = claims.frameBytes === 0 ? Math.ceil(bitCount / 8) : claims.frameBytes / channelCount;
  const widths = isFloat ? [4, 8] : [1, 2, 3, 4];
  if (
    !widths.includes(byteCount) ||
    bitCount > 8 * byteCount ||
    bitCount === 0 ||
    (isFloat && bitCount !== 8 * byteCount)
  ) {
    const what = isFloat ? 'floating-point samples' : 'whole-number samples';
    return faulty(
      'damaged-header',
      `it is a WAV file with ${what} of ${bitCount} bits in frames of ${claims.frameBytes} bytes for ${channelCount} channels, which does not fit together`,
    );
  }
  const coding = { kind: isFloat ? 'float' : 'integer', byteCount } as const;
  return { opened: true, coding, sampleRateHz, channelCount, frameBytes: byteCount * channelCount };
}

function formatNumber(view: DataView, chunk: Uint8Array): number | undefined {
  const code = view.getUint16(0, true);
  if (code !== EXTENSIBLE) return code;
  if (chunk.length < 40 || EXTENSIBLE_TAIL.some((byte, index) => chunk[28 + index] !== byte)) return undefined;
  return view.getUint32(24, true);
}
