/** The checksum of a ZIP file's entries. Source: ISO/IEC 21320-1 and PKWARE's APPNOTE 4.4.7 (polynomial EDB88320, reflected). */

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** @param before the checksum of what came before; 0 at the start */
export function crc32(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  for (let index = 0; index < bytes.length; index++)
    crc = (TABLE[(crc ^ (bytes[index] ?? 0)) & 0xff] ?? 0) ^ (crc >>> 8);
  return ~crc >>> 0;
}
