/** MP3 files (MPEG-1, 2 and 2.5, layer 3). */
import { MPEGDecoder } from 'mpg123-decoder';
import { type AudioOutcome, faulty } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { openCompressed } from './compressedStream.ts';
import { type Mp3Frame, mp3FrameAt, statedFrameCount } from './mp3Frame.ts';

/** Sound may begin this far behind the tags. */
const SEARCH_BYTES = 8192;
/** So many frames in a row must fit together before bytes count as MP3: two alike turn up by chance in other files. */
const FRAMES_IN_A_ROW = 3;

/** Undefined where no frames of MPEG sound are found near `startOffset`. */
export async function openMp3(source: ByteSource, startOffset: number): Promise<AudioOutcome | undefined> {
  const bytes = await source.read(startOffset, SEARCH_BYTES + FRAMES_IN_A_ROW * 4608);
  const at = firstFrame(bytes, startOffset + bytes.length >= source.byteCount);
  const frame = at === undefined ? undefined : mp3FrameAt(bytes, at);
  if (at === undefined || !frame) return undefined;
  if (frame.layer !== 3)
    return faulty(
      'unsupported-codec',
      `it is MPEG sound of layer ${frame.layer}, which is not read; save it as WAV or FLAC`,
    );
  const frameCount = statedFrameCount(bytes, at, frame);
  return openCompressed({
    format: 'MP3',
    source,
    startOffset: startOffset + at,
    sampleRateHz: frame.sampleRateHz,
    channelCount: frame.channelCount,
    statedSampleCount: frameCount === null ? null : frameCount * frame.sampleCount,
    isEndMissing: false,
    createDecoder: () => new MPEGDecoder(),
  });
}

function firstFrame(bytes: Uint8Array, isWholeFile: boolean): number | undefined {
  for (let at = 0; at < Math.min(SEARCH_BYTES, bytes.length); at += 1)
    if (bytes[at] === 0xff && framesFollow(bytes, at, isWholeFile)) return at;
  return undefined;
}

function framesFollow(bytes: Uint8Array, start: number, isWholeFile: boolean): boolean {
  let at = start;
  let first: Mp3Frame | undefined;
  for (let count = 0; count < FRAMES_IN_A_ROW; count += 1) {
    const frame = mp3FrameAt(bytes, at);
    // A very short file may end before the third frame, but not before the second.
    if (!frame) return isWholeFile && count > 1 && at + 4 > bytes.length;
    first ??= frame;
    if (frame.sampleRateHz !== first.sampleRateHz || frame.layer !== first.layer) return false;
    at += frame.byteCount;
  }
  return true;
}
