/**
 * The head of a RIFF/WAVE file: where the samples are and how they are written.
 *
 * Source: Microsoft/IBM "Multimedia Programming Interface and Data Specifications 1.0" (1991) for RIFF and WAVE, Microsoft's
 * WAVEFORMATEXTENSIBLE, and EBU Tech 3306 (RF64) for files above 4 GiB. A chunk is four letters, a 32-bit length and that many
 * bytes, padded to an even count.
 */
import { type AudioWarning, faulty, sampleRateFault } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { type SampleCoding, waveFormat } from './waveFormat.ts';

export type WaveHeader = {
  readonly coding: SampleCoding;
  readonly sampleRateHz: number;
  readonly channelCount: number;
  /** Bytes of one sample of all channels. */
  readonly frameBytes: number;
  readonly dataOffset: number;
  /** Whole frames only, and no more than the file holds. */
  readonly dataBytes: number;
  readonly warnings: readonly AudioWarning[];
};

export type WaveHeaderOutcome = { readonly opened: true; readonly header: WaveHeader } | ReturnType<typeof faulty>;

type Chunk = { readonly id: string; readonly bodyOffset: number; readonly byteCount: number };

/** More chunks than any recorder writes; a file with more is a heap of zeros, not a recording. */
const MOST_CHUNKS = 4096;
const STREAMING_SIZE = 0xffffffff;
/** Programs that write to a pipe state a length near 2 GiB, since they cannot know it. */
const PIPE_SIZE = 0x7ffff000;

/** Expects a source that begins with `RIFF` or `RF64`. */
export async function readWaveHeader(source: ByteSource): Promise<WaveHeaderOutcome> {
  const chunks = await chunksUpToData(source);
  const formatChunk = chunks.find((chunk) => chunk.id === 'fmt ');
  const data = chunks.find((chunk) => chunk.id === 'data');
  if (!formatChunk)
    return faulty(
      'damaged-header',
      'it begins like a WAV file but has no format chunk before its sound; record or export it again',
    );
  const format = waveFormat(await source.read(formatChunk.bodyOffset, Math.min(formatChunk.byteCount, 40)));
  if (!format.opened) return format;
  const rateFault = sampleRateFault(format.sampleRateHz);
  if (rateFault) return rateFault;
  if (!data) return faulty('no-audio-data', 'it is a WAV file whose sound is missing: the file ends after its header');
  const { coding, sampleRateHz, channelCount, frameBytes } = format;
  const size = await dataSize(source, data, chunks, frameBytes);
  if (size.byteCount === 0)
    return faulty('no-audio-data', 'it is a WAV file that holds no sound (its data are 0 bytes long)');
  const header = { coding, sampleRateHz, channelCount, frameBytes, dataOffset: data.bodyOffset };
  return { opened: true, header: { ...header, dataBytes: size.byteCount, warnings: size.warnings } };
}

async function chunksUpToData(source: ByteSource): Promise<Chunk[]> {
  const chunks: Chunk[] = [];
  let offset = 12;
  while (offset + 8 <= source.byteCount && chunks.length < MOST_CHUNKS) {
    const head = await source.read(offset, 8);
    if (head.length < 8) break;
    const chunk = { id: fourLetters(head, 0), bodyOffset: offset + 8, byteCount: viewOf(head).getUint32(4, true) };
    chunks.push(chunk);
    if (chunk.id === 'data') break;
    offset = chunk.bodyOffset + chunk.byteCount + (chunk.byteCount % 2);
  }
  return chunks;
}

async function dataSize(source: ByteSource, data: Chunk, chunks: readonly Chunk[], frameBytes: number) {
  const present = source.byteCount - data.bodyOffset;
  const stated = await statedDataBytes(source, data, chunks);
  const isOpenEnded =
    stated === null ||
    (stated >= PIPE_SIZE && stated <= STREAMING_SIZE && stated > present) ||
    (stated === 0 && present > 0 && !(await isChunkAt(source, data.bodyOffset)));
  const wanted = isOpenEnded ? present : Math.min(stated, present);
  const byteCount = wanted - (wanted % frameBytes);
  const warnings: AudioWarning[] = [];
  if (isOpenEnded)
    warnings.push({
      kind: 'length-not-stated',
      message: 'the file does not say how long it is (a recorder stopped before finishing it); it was read to its end',
    });
  else if (stated > present)
    warnings.push({
      kind: 'truncated',
      message: `the file is cut short: ${present} of ${stated} bytes of sound are there, and those were read`,
    });
  return { byteCount, warnings };
}

/** Null where the file leaves it open; RF64 keeps the length in a chunk of its own. */
async function statedDataBytes(source: ByteSource, data: Chunk, chunks: readonly Chunk[]): Promise<number | null> {
  if (data.byteCount !== STREAMING_SIZE) return data.byteCount;
  const large = chunks.find((chunk) => chunk.id === 'ds64');
  const sizes = large ? await source.read(large.bodyOffset, 16) : new Uint8Array(0);
  if (sizes.length < 16) return null;
  const view = viewOf(sizes);
  const byteCount = view.getUint32(12, true) * 2 ** 32 + view.getUint32(8, true);
  return byteCount === 0 || byteCount > Number.MAX_SAFE_INTEGER ? null : byteCount;
}

/** Whether a chunk that ends inside the file begins here: then a data length of 0 is meant. */
async function isChunkAt(source: ByteSource, offset: number): Promise<boolean> {
  const head = await source.read(offset, 8);
  if (head.length < 8 || !/^[A-Za-z][A-Za-z0-9_ -]{3}$/.test(fourLetters(head, 0))) return false;
  return offset + 8 + viewOf(head).getUint32(4, true) <= source.byteCount;
}

export function fourLetters(bytes: Uint8Array, offset: number): string {
  return String.fromCharCode(...bytes.subarray(offset, offset + 4));
}

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
