/** A recording that has been opened: what it is, and its sound as one channel, block by block. */

export type AudioFormat = 'WAV' | 'FLAC' | 'OGG Vorbis' | 'MP3';

/** What is worth knowing about a recording that could be read all the same. */
export type AudioWarningKind = 'truncated' | 'length-not-stated' | 'mixed-to-mono' | 'not-a-number' | 'damaged-stretch';

export type AudioWarning = { readonly kind: AudioWarningKind; readonly message: string };

export type AudioStream = {
  readonly format: AudioFormat;
  readonly sampleRateHz: number;
  /** In the file; the blocks hold their mean as one channel. */
  readonly channelCount: number;
  /** As the file states it, null where it does not. */
  readonly statedDurationS: number | null;
  /** Complete once the last block has been read. */
  readonly warnings: readonly AudioWarning[];
  /** One channel, full scale ±1 (floating-point files may go beyond). May be asked for once. */
  blocks(): AsyncIterable<Float32Array>;
};

/** Why a file could not be read. A closed list: screens and the command line may have words of their own for each. */
export type AudioFaultReason =
  | 'empty-file'
  | 'not-audio'
  | 'unsupported-format'
  | 'unsupported-codec'
  | 'unsupported-rate'
  | 'damaged-header'
  | 'no-audio-data';

export type AudioFault = {
  readonly reason: AudioFaultReason;
  /** One sentence: what is wrong and what to do. It does not name the file. */
  readonly message: string;
};

export type AudioOutcome =
  | { readonly opened: true; readonly audio: AudioStream }
  | { readonly opened: false; readonly fault: AudioFault };

export function faulty(
  reason: AudioFaultReason,
  message: string,
): { readonly opened: false; readonly fault: AudioFault } {
  return { opened: false, fault: { reason, message } };
}

/**
 * Below the first, the top octave's partials are cut off; the last is the fastest rate that ordinary sound cards have.
 * MIDI note 108 has its second partial near 8.7 kHz.
 */
const LOWEST_SAMPLE_RATE_HZ = 22050;
const HIGHEST_SAMPLE_RATE_HZ = 192000;

/** The fault of a sample rate out of range, undefined if it is in range. */
export function sampleRateFault(sampleRateHz: number): ReturnType<typeof faulty> | undefined {
  if (sampleRateHz >= LOWEST_SAMPLE_RATE_HZ && sampleRateHz <= HIGHEST_SAMPLE_RATE_HZ) return undefined;
  const range = `${LOWEST_SAMPLE_RATE_HZ} to ${HIGHEST_SAMPLE_RATE_HZ} Hz`;
  return faulty(
    'unsupported-rate',
    `its sample rate is ${sampleRateHz} Hz, and ${range} can be measured; record again at 44100 or 48000 Hz`,
  );
}

/** All blocks in one piece. */
export async function readAllSamples(audio: AudioStream): Promise<Float32Array> {
  const blocks: Float32Array[] = [];
  for await (const block of audio.blocks()) blocks.push(block);
  return joinBlocks(blocks);
}

export function joinBlocks(blocks: readonly Float32Array[]): Float32Array {
  const joined = new Float32Array(blocks.reduce((count, block) => count + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    joined.set(block, at);
    at += block.length;
  }
  return joined;
}
