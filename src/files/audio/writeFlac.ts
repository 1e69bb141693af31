/**
 * Samples as a FLAC file of one channel and 24 bits, which any program that knows the format can play.
 * Source: RFC 9639 (2024). Only what a take needs: fixed predictors, blocks of one length, no tags.
 */
import { type BitWriter, createBitWriter } from './bitWriter.ts';
import { frameChecksum, headerChecksum } from './flacChecksums.ts';
import { FLAC_BITS, putSubframe } from './flacSubframe.ts';

const BLOCK_SAMPLES = 4096;
/** Every frame states its rate, in 16 bits: decoders that are handed frames alone know no other. */
const HIGHEST_RATE_HZ = 2 ** 16 - 1;
/** Those that have a code of their own. */
const RATE_CODES: Readonly<Record<number, number>> = {
  88200: 1,
  176400: 2,
  192000: 3,
  8000: 4,
  16000: 5,
  22050: 6,
  24000: 7,
  32000: 8,
  44100: 9,
  48000: 10,
  96000: 11,
};
const RATE_FOLLOWS = 13;

/**
 * @param samples whole numbers from −2²³ to 2²³ − 1; full scale is 2²³
 * @throws {RangeError} if the sample rate is no whole number up to 65535 and none of 88200, 96000, 176400 and 192000
 */
export function writeFlac(samples: Int32Array, sampleRateHz: number): Uint8Array<ArrayBuffer> {
  const isRate = Number.isInteger(sampleRateHz) && sampleRateHz >= 1 && sampleRateHz <= HIGHEST_RATE_HZ;
  if (!isRate && RATE_CODES[sampleRateHz] === undefined)
    throw new RangeError(
      `sampleRateHz must be a whole number up to ${HIGHEST_RATE_HZ}, or a usual one, got ${sampleRateHz}`,
    );
  const writer = createBitWriter();
  putStreamInfo(writer, samples.length, sampleRateHz);
  for (let start = 0, number = 0; start < samples.length; start += BLOCK_SAMPLES, number += 1)
    putFrame(writer, samples.subarray(start, start + BLOCK_SAMPLES), number, sampleRateHz);
  return writer.bytesFrom(0);
}

/** Frame sizes and the sound's own digest are left at 0, which stands for "not known". */
function putStreamInfo(writer: BitWriter, sampleCount: number, sampleRateHz: number): void {
  for (const letter of 'fLaC') writer.put(letter.charCodeAt(0), 8);
  writer.put(0x80, 8); // the last block of metadata, of the kind 0
  writer.put(34, 24);
  writer.put(BLOCK_SAMPLES, 16);
  writer.put(BLOCK_SAMPLES, 16);
  writer.put(0, 24);
  writer.put(0, 24);
  writer.put(sampleRateHz, 20);
  writer.put(0, 3); // one channel
  writer.put(FLAC_BITS - 1, 5);
  writer.put(Math.floor(sampleCount / 2 ** 32), 4);
  writer.put(sampleCount, 32);
  for (let word = 0; word < 4; word += 1) writer.put(0, 32);
}

function putFrame(writer: BitWriter, block: Int32Array, frameNumber: number, sampleRateHz: number): void {
  const rateCode = RATE_CODES[sampleRateHz] ?? RATE_FOLLOWS;
  const start = writer.byteCount();
  writer.put(0xfff8, 16); // where a frame begins; blocks of one length
  writer.put(0x7, 4); // the block's length follows in 16 bits
  writer.put(rateCode, 4);
  writer.put(0, 4); // one channel
  writer.put(0x6, 3); // 24 bits
  writer.put(0, 1);
  putFrameNumber(writer, frameNumber);
  writer.put(block.length - 1, 16);
  if (rateCode === RATE_FOLLOWS) writer.put(sampleRateHz, 16);
  writer.put(headerChecksum(writer.bytesFrom(start)), 8);
  putSubframe(writer, block);
  writer.align();
  writer.put(frameChecksum(writer.bytesFrom(start)), 16);
}

/** Coded as a character of UTF-8 is (section 9.1.5); 65536 frames are more than an hour at any rate in use. */
function putFrameNumber(writer: BitWriter, number: number): void {
  if (number < 0x80) {
    writer.put(number, 8);
  } else if (number < 0x800) {
    writer.put(0xc0 | (number >> 6), 8);
    writer.put(0x80 | (number & 0x3f), 8);
  } else if (number < 0x10000) {
    writer.put(0xe0 | (number >> 12), 8);
    writer.put(0x80 | ((number >> 6) & 0x3f), 8);
    writer.put(0x80 | (number & 0x3f), 8);
  } else {
    throw new RangeError(`samples must be at most ${0x10000 * BLOCK_SAMPLES} long, got more`);
  }
}
