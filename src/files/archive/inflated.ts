/** Unpacks deflate data piece by piece: by the platform's own means where it has them, which is faster, else by the library. */
import { Inflate } from 'fflate';

/** The data is not what it says: damaged, or cut short. */
export class UnpackFault extends Error {
  override readonly name = 'UnpackFault';
}

/** Small enough that even a piece of pure repetition unpacks to some 30 MB. */
const PIECE_BYTES = 1 << 15;

export async function* libraryInflated(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let ready: Uint8Array[] = [];
  let isWhole = false;
  const inflate = new Inflate((bytes, isLast) => {
    if (bytes.length > 0) ready.push(bytes);
    isWhole ||= isLast;
  });
  const push = (bytes: Uint8Array, isLast: boolean) => {
    try {
      inflate.push(bytes as Uint8Array<ArrayBuffer>, isLast);
    } catch (cause) {
      throw new UnpackFault('the data is damaged', { cause });
    }
    const pieces = ready;
    ready = [];
    return pieces;
  };
  for await (const bytes of packed)
    for (let at = 0; at < bytes.length; at += PIECE_BYTES) yield* push(bytes.subarray(at, at + PIECE_BYTES), false);
  yield* push(new Uint8Array(0), true);
  if (!isWhole) throw new UnpackFault('the data breaks off');
}

/** Pieces of the platform's are small; so many bytes are handed on together. */
const GATHERED_BYTES = 1 << 17;

export async function* platformInflated(packed: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const { writable, readable } = new DecompressionStream('deflate-raw');
  const reader = readable.getReader();
  const feeding = feed(writable.getWriter(), packed);
  let gathered: Uint8Array[] = [];
  let byteCount = 0;
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      gathered.push(next.value);
      byteCount += next.value.length;
      if (byteCount < GATHERED_BYTES) continue;
      yield joined(gathered, byteCount);
      gathered = [];
      byteCount = 0;
    }
    if (byteCount > 0) yield joined(gathered, byteCount);
  } catch (cause) {
    const fed = await feeding;
    throw fed.isSourceFault ? fed.fault : new UnpackFault('the data is damaged or breaks off', { cause });
  } finally {
    await reader.cancel().catch(() => undefined); // a stream that failed was told of above
    await feeding;
  }
}

type Fed = { readonly isSourceFault: boolean; readonly fault?: unknown };
type Writer = ReturnType<DecompressionStream['writable']['getWriter']>;

/** Never rejects: what is wrong with the data the reader of the stream is told. */
async function feed(writer: Writer, packed: AsyncIterable<Uint8Array>): Promise<Fed> {
  writer.closed.catch(() => undefined);
  const pieces = packed[Symbol.asyncIterator]();
  try {
    for (let isOpen = true; isOpen; ) {
      const next = await pieces.next().catch((fault: unknown) => ({ fault }));
      if ('fault' in next) {
        await writer.abort(next.fault);
        return { isSourceFault: true, fault: next.fault };
      }
      if (next.done) isOpen = false;
      else await writer.write(next.value as Uint8Array<ArrayBuffer>);
    }
    await writer.close();
  } catch {
    await pieces.return?.();
  }
  return { isSourceFault: false };
}

function joined(pieces: readonly Uint8Array[], byteCount: number): Uint8Array {
  const [first] = pieces;
  if (first !== undefined && pieces.length === 1) return first;
  const whole = new Uint8Array(byteCount);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
