/** ID3v2 tags, which some programs put before the sound of MP3 and FLAC files. */
import type { ByteSource } from './byteSource.ts';

/**
 * Where the sound begins: 0, or the offset after the tag or tags at the front; the end of the source where a tag claims more
 * than the file holds. Source: M. Nilsson, "ID3 tag version 2.4.0 – Main structure" (2000), section 3.1.
 */
export async function afterTags(source: ByteSource): Promise<number> {
  let offset = 0;
  for (;;) {
    const head = await source.read(offset, 10);
    const isTag = head.length === 10 && head[0] === 0x49 && head[1] === 0x44 && head[2] === 0x33;
    if (!isTag || offset >= source.byteCount) return Math.min(offset, source.byteCount);
    const size = head.subarray(6, 10).reduce((sum, byte) => sum * 128 + (byte & 0x7f), 0);
    const hasFooter = ((head[5] ?? 0) & 0x10) !== 0;
    offset += 10 + size + (hasFooter ? 10 : 0);
  }
}
