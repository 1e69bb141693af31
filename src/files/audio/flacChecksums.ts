/** The two checksums of a FLAC frame. Source: RFC 9639 (2024), sections 9.1.8 and 9.3. */

const HEADER_POLYNOMIAL = 0x07;
const FRAME_POLYNOMIAL = 0x8005;

/** Of a frame's header: 8 bits, polynomial x⁸ + x² + x + 1, starting from 0. */
export function headerChecksum(bytes: Uint8Array): number {
  return bytes.reduce((sum, byte) => HEADER_TABLE[sum ^ byte] ?? 0, 0);
}

/** Of a whole frame: 16 bits, polynomial x¹⁶ + x¹⁵ + x² + 1, starting from 0. */
export function frameChecksum(bytes: Uint8Array): number {
  let sum = 0;
  for (const byte of bytes) sum = ((sum << 8) & 0xff00) ^ (FRAME_TABLE[(sum >>> 8) ^ byte] ?? 0);
  return sum;
}

const HEADER_TABLE = tableOf(HEADER_POLYNOMIAL, 8);
const FRAME_TABLE = tableOf(FRAME_POLYNOMIAL, 16);

function tableOf(polynomial: number, bitCount: 8 | 16): Uint16Array {
  const [top, mask] = [1 << (bitCount - 1), (1 << bitCount) - 1];
  return Uint16Array.from({ length: 256 }, (_, byte) => {
    let sum = byte << (bitCount - 8);
    for (let bit = 0; bit < 8; bit += 1) sum = ((sum << 1) ^ ((sum & top) === 0 ? 0 : polynomial)) & mask;
    return sum;
  });
}
