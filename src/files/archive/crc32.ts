/** The checksum of a ZIP file's entries. Source: ISO/IEC 21320-1 and PKWARE's APPNOTE 4.4.7 (polynomial EDB88320, reflected). */

/**
 * Four tables one after another: the n-th says what a byte does n bytes before the end of four, so that four bytes are taken at a time.
 * Source: M. E. Kounavis, F. L. Berry, IEEE Trans. Comput. 57 (2008) 1550–1560 ("slicing").
 */
const TABLES = new Uint32Array(4 * 256);
for (let byte = 0; byte < 256; byte++) {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  TABLES[byte] = value;
}
for (let index = 256; index < TABLES.length; index++) {
  const before = TABLES[index - 256] ?? 0;
  TABLES[index] = (before >>> 8) ^ (TABLES[before & 0xff] ?? 0);
}

/** @param before the checksum of what came before; 0 at the start */
export function crc32(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  let index = 0;
  for (const end = bytes.length - 3; index < end; index += 4) {
    crc ^= at(bytes, index) | (at(bytes, index + 1) << 8) | (at(bytes, index + 2) << 16) | (at(bytes, index + 3) << 24);
    crc =
      at(TABLES, 768 + (crc & 0xff)) ^
      at(TABLES, 512 + ((crc >>> 8) & 0xff)) ^
      at(TABLES, 256 + ((crc >>> 16) & 0xff)) ^
      at(TABLES, crc >>> 24);
  }
  for (; index < bytes.length; index++) crc = at(TABLES, (crc ^ at(bytes, index)) & 0xff) ^ (crc >>> 8);
  return ~crc >>> 0;
}

function at(list: Uint8Array | Uint32Array, index: number): number {
  return list[index] ?? 0;
}
