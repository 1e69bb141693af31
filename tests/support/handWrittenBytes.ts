/** Files written byte by byte, for readers that must not be tested against the project's own writers. */

export type Piece = string | readonly number[] | Uint8Array;

/** Letters (one byte each) and numbers from 0 to 255, one after another. */
export function bytesOf(...pieces: readonly Piece[]): Uint8Array {
  return Uint8Array.from(
    pieces.flatMap((piece) =>
      typeof piece === 'string' ? [...piece].map((letter) => letter.charCodeAt(0)) : [...piece],
    ),
  );
}

/** Little-endian, 16 bits. @example u16(0x1234) // [0x34, 0x12] */
export function u16(value: number): number[] {
  return [value & 0xff, (value >>> 8) & 0xff];
}

/** Little-endian, 32 bits. */
export function u32(value: number): number[] {
  return [...u16(value & 0xffff), ...u16(value >>> 16)];
}

/** A chunk with its true length and, where that is odd, its padding. */
export function chunk(id: string, body: Piece): Uint8Array {
  const bytes = bytesOf(body);
  return bytesOf(id, u32(bytes.length), bytes, bytes.length % 2 === 1 ? [0] : []);
}

export function riff(...chunks: readonly Uint8Array[]): Uint8Array {
  const body = bytesOf('WAVE', ...chunks);
  return bytesOf('RIFF', u32(body.length), body);
}

export type FormatClaims = {
  readonly code?: number;
  readonly channelCount?: number;
  readonly rateHz?: number;
  readonly bitCount?: number;
  readonly frameBytes?: number;
};

/** The body of a format chunk; 48 kHz, one channel, 16-bit integers unless said. */
export function formatBody(claims: FormatClaims = {}): number[] {
  const { code = 1, channelCount = 1, rateHz = 48000, bitCount = 16 } = claims;
  const frameBytes = claims.frameBytes ?? (channelCount * bitCount) / 8;
  return [
    ...u16(code),
    ...u16(channelCount),
    ...u32(rateHz),
    ...u32(rateHz * frameBytes),
    ...u16(frameBytes),
    ...u16(bitCount),
  ];
}

/** WAVE_FORMAT_EXTENSIBLE with a sub-format number. */
export function extensibleBody(
  subFormat: number,
  claims: FormatClaims & { readonly validBits?: number } = {},
): number[] {
  const tail = [0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];
  const validBits = claims.validBits ?? claims.bitCount ?? 16;
  return [
    ...formatBody({ ...claims, code: 0xfffe }),
    ...u16(22),
    ...u16(validBits),
    ...u32(4),
    ...u32(subFormat),
    ...tail,
  ];
}
