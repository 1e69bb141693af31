/** OGG files: Vorbis, and FLAC in an OGG container. Opus and others get a clear message. */
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { type AudioOutcome, faulty } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { openCompressed } from './compressedStream.ts';
import { flacStreamInfo } from './openFlac.ts';
import { fourLetters, viewOf } from './waveHeader.ts';

/** Source: RFC 3533 (2003), section 6, for pages; Xiph.Org "Vorbis I specification", 4.2.2, for the first packet. */
export async function openOgg(source: ByteSource): Promise<AudioOutcome> {
  const page = await source.read(0, 512);
  const packet = page.subarray(27 + (page[26] ?? 0));
  const name = String.fromCharCode(...packet.subarray(0, 8));
  const tail = await lastPage(source);
  if (name.startsWith('\x01vorbis') && packet.length >= 16)
    return openCompressed({
      format: 'OGG Vorbis',
      source,
      startOffset: 0,
      sampleRateHz: viewOf(packet).getUint32(12, true),
      channelCount: Math.max(1, packet[11] ?? 1),
      statedSampleCount: null,
      isEndMissing: !tail.isEndOfStream,
      createDecoder: () => new OggVorbisDecoder(),
    });
  const info = name.startsWith('\x7fFLAC') ? flacStreamInfo(packet.subarray(13)) : undefined;
  if (info)
    return openCompressed({
      format: 'FLAC',
      source,
      startOffset: 0,
      sampleRateHz: info.sampleRateHz,
      channelCount: info.channelCount,
      statedSampleCount: info.sampleCount,
      isEndMissing: !tail.isEndOfStream,
      createDecoder: () => new FLACDecoder(),
    });
  return otherCodec(name);
}

function otherCodec(name: string): AudioOutcome {
  const codec = name.startsWith('OpusHead') ? 'Opus' : name.startsWith('Speex') ? 'Speex' : undefined;
  if (codec)
    return faulty(
      'unsupported-codec',
      `it is an OGG file coded as ${codec}, which is not read; save it as WAV or FLAC`,
    );
  return faulty('damaged-header', 'it is an OGG file whose first page holds no sound that can be read');
}

/** A page is at most 65,307 bytes long, so the last one begins within that many of the end. */
async function lastPage(source: ByteSource): Promise<{ readonly isEndOfStream: boolean }> {
  const offset = Math.max(0, source.byteCount - 65_307);
  const bytes = await source.read(offset, 65_307);
  for (let at = bytes.length - 27; at >= 0; at -= 1)
    if (bytes[at] === 0x4f && fourLetters(bytes, at) === 'OggS') return { isEndOfStream: isWholeEndPage(bytes, at) };
  return { isEndOfStream: false };
}

function isWholeEndPage(bytes: Uint8Array, at: number): boolean {
  const segmentCount = bytes[at + 26] ?? 0;
  const lengths = bytes.subarray(at + 27, at + 27 + segmentCount);
  const end = at + 27 + segmentCount + lengths.reduce((sum, length) => sum + length, 0);
  return ((bytes[at + 5] ?? 0) & 0x04) !== 0 && lengths.length === segmentCount && end <= bytes.length;
}
