/** Bits into bytes, the most significant first. */

export type BitWriter = {
  /** @param bitCount 0 to 32; higher bits of the value are ignored. */
  readonly put: (value: number, bitCount: number) => void;
  /** So many zeros and then a one. */
  readonly putUnary: (zeroCount: number) => void;
  /** Fills the last byte with zeros. */
  readonly align: () => void;
  /** What was written, from a byte on. Call after `align`. */
  readonly bytesFrom: (offset: number) => Uint8Array<ArrayBuffer>;
  readonly byteCount: () => number;
};

export function createBitWriter(firstCapacity = 65536): BitWriter {
  let bytes = new Uint8Array(firstCapacity);
  let length = 0;
  let pending = 0;
  let pendingBits = 0;
  const pushByte = (byte: number) => {
    if (length === bytes.length) {
      const larger = new Uint8Array(2 * length);
      larger.set(bytes);
      bytes = larger;
    }
    bytes[length] = byte;
    length += 1;
  };
  const put = (value: number, bitCount: number) => {
    let left = bitCount;
    while (left > 0) {
      const taken = Math.min(8 - pendingBits, left);
      left -= taken;
      pending = (pending << taken) | ((value >>> left) & ((1 << taken) - 1));
      pendingBits += taken;
      if (pendingBits < 8) continue;
      pushByte(pending);
      pending = 0;
      pendingBits = 0;
    }
  };
  return {
    put,
    putUnary: (zeroCount) => {
      let left = zeroCount;
      for (; left > 31; left -= 31) put(0, 31);
      put(1, left + 1);
    },
    align: () => put(0, (8 - pendingBits) % 8),
    bytesFrom: (offset) => bytes.slice(offset, length),
    byteCount: () => length,
  };
}
