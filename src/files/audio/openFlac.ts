/** FLAC files. */
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { type AudioOutcome, faulty, joinBlocks } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { type Decoded, type Decoder, openCompressed } from './compressedStream.ts';

export type FlacStreamInfo = {
  readonly sampleRateHz: number;
  readonly channelCount: number;
  readonly bitCount: number;
  /** Null where the encoder did not know it. */
  readonly sampleCount: number | null;
};

/** The decoder's own limit. */
const MOST_BITS = 24;

/** @param startOffset where the letters `fLaC` stand. */
export async function openFlac(source: ByteSource, startOffset: number): Promise<AudioOutcome> {
  const info = flacStreamInfo(await source.read(startOffset + 4, STREAM_INFO_BYTES));
  if (!info) return faulty('damaged-header', 'it is a FLAC file whose header is damaged or cut short');
  if (info.bitCount > MOST_BITS)
    return faulty(
      'unsupported-codec',
      `it is a FLAC file of ${info.bitCount} bits, and up to ${MOST_BITS} are read; save it with 24 bits`,
    );
  return openCompressed({
    format: 'FLAC',
    source,
    startOffset,
    sampleRateHz: info.sampleRateHz,
    channelCount: info.channelCount,
    statedSampleCount: info.sampleCount,
    isEndMissing: false,
    createDecoder: () => exactDecoder(info.bitCount),
  });
}

/**
 * The decoder package, made exact. It divides a sample of N bits by 2^(N−1) − 1; as everywhere else here full scale is 2^(N−1),
 * and the whole numbers of the file come back as they were written. And where the third last byte of a file is FF it loses the
 * last frame; zeros after the end keep it from that, and do not disturb the frame's checksum.
 */
function exactDecoder(bitCount: number): Decoder {
  const decoder = new FLACDecoder();
  const fullScale = 2 ** (bitCount - 1);
  const exact = ({ channelData, errors }: Decoded): Decoded => ({
    channelData: channelData.map((channel) => channel.map((one) => Math.round(one * (fullScale - 1)) / fullScale)),
    errors,
  });
  const decode = async (bytes: Uint8Array) => exact(await decoder.decode(bytes));
  return {
    ready: decoder.ready,
    decode,
    flush: async () => {
      const pieces = [await decode(new Uint8Array(BYTES_AFTER_END)), exact(await decoder.flush())];
      const sounding = pieces.filter(({ channelData: [first] }) => first !== undefined && first.length > 0);
      const errors = pieces.flatMap((piece) => piece.errors);
      const channels = sounding[0]?.channelData ?? [];
      const channelData = channels.map((_, index) =>
        joinBlocks(sounding.flatMap((piece) => piece.channelData[index] ?? [])),
      );
      return { channelData, errors };
    },
    free: () => decoder.free(),
  };
}

const BYTES_AFTER_END = 4;

/** A metadata block's head (4 bytes) and the stream information in it. */
const STREAM_INFO_BYTES = 4 + 34;

/** Undefined where it is no stream information. Source: RFC 9639 (2024), sections 8.1 and 8.2. */
export function flacStreamInfo(block: Uint8Array): FlacStreamInfo | undefined {
  if (block.length < STREAM_INFO_BYTES || ((block[0] ?? 0xff) & 0x7f) !== 0) return undefined;
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  const packed = view.getUint32(14);
  const sampleCount = (packed & 0x0f) * 2 ** 32 + view.getUint32(18);
  return {
    sampleRateHz: packed >>> 12,
    channelCount: ((packed >>> 9) & 0x07) + 1,
    bitCount: ((packed >>> 4) & 0x1f) + 1,
    sampleCount: sampleCount === 0 ? null : sampleCount,
  };
}
