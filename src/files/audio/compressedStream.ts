/** A compressed recording as a stream of samples, whatever decoder turns its bytes into sound. */
import { type AudioFormat, type AudioOutcome, type AudioWarning, faulty, sampleRateFault } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { mixToMono, mixWarnings } from './mixToMono.ts';

/** What the decoder packages have in common. */
export type Decoder = {
  readonly ready: Promise<void>;
  decode(bytes: Uint8Array): Promise<Decoded> | Decoded;
  flush?(): Promise<Decoded>;
  free(): void;
};
export type Decoded = { readonly channelData: Float32Array[]; readonly errors: readonly unknown[] };

export type CompressedFile = {
  readonly format: AudioFormat;
  readonly source: ByteSource;
  /** Where the decoder starts to read. */
  readonly startOffset: number;
  readonly sampleRateHz: number;
  readonly channelCount: number;
  /** Per channel, null where the file does not say. */
  readonly statedSampleCount: number | null;
  /** True where the file's last bytes show that its end is missing. */
  readonly isEndMissing: boolean;
  readonly createDecoder: () => Decoder;
};

const BYTES_PER_READ = 65536;
/** Encoders round the length to whole frames and some count their own delay: up to this much less is no loss. */
const FRAME_SLACK_SAMPLES = 4608;

/** Decodes until the first sound appears, so that a file without any is a fault and not an empty stream. */
export async function openCompressed(file: CompressedFile): Promise<AudioOutcome> {
  const rateFault = sampleRateFault(file.sampleRateHz);
  if (rateFault) return rateFault;
  const warnings = mixWarnings(file.channelCount);
  const sound = decodedBlocks(file, warnings);
  const first = await sound.next();
  if (first.done)
    return faulty('no-audio-data', `it is a damaged or empty ${file.format} file: no sound could be decoded from it`);
  return {
    opened: true,
    audio: {
      format: file.format,
      sampleRateHz: file.sampleRateHz,
      channelCount: file.channelCount,
      statedDurationS: file.statedSampleCount === null ? null : file.statedSampleCount / file.sampleRateHz,
      warnings,
      async *blocks() {
        yield first.value;
        yield* sound;
      },
    },
  };
}

async function* decodedBlocks(file: CompressedFile, warnings: AudioWarning[]): AsyncGenerator<Float32Array, void> {
  const decoder = file.createDecoder();
  let sampleCount = 0;
  let errorCount = 0;
  try {
    await decoder.ready;
    for await (const piece of decodedPieces(file, decoder)) {
      errorCount += piece.errors.length;
      const block = mixToMono(piece.channelData.slice(0, file.channelCount));
      sampleCount += block.length;
      if (block.length > 0) yield block;
    }
  } catch {
    // The decoders throw on streams that they cannot follow; what came before is sound all the same.
    errorCount += 1;
  } finally {
    decoder.free();
  }
  warnings.push(...lossWarnings(file, sampleCount, errorCount));
}

async function* decodedPieces(file: CompressedFile, decoder: Decoder): AsyncGenerator<Decoded, void> {
  for (let offset = file.startOffset; offset < file.source.byteCount; offset += BYTES_PER_READ)
    yield await decoder.decode(await file.source.read(offset, BYTES_PER_READ));
  if (decoder.flush) yield await decoder.flush();
}

function lossWarnings(file: CompressedFile, sampleCount: number, errorCount: number): AudioWarning[] {
  const stated = file.statedSampleCount;
  const isShort = stated !== null && sampleCount < stated - FRAME_SLACK_SAMPLES;
  const seconds = (count: number) => (count / file.sampleRateHz).toFixed(1);
  const warnings: AudioWarning[] = [];
  if (errorCount > 0)
    warnings.push({
      kind: 'damaged-stretch',
      message: 'parts of the file are damaged and were left out; later times are too early',
    });
  if (isShort)
    warnings.push({
      kind: 'truncated',
      message: `the file is cut short or damaged: ${seconds(sampleCount)} of ${seconds(stated)} s of sound are there, and those were read`,
    });
  else if (file.isEndMissing)
    warnings.push({ kind: 'truncated', message: 'the file is cut short: its end is missing; what is there was read' });
  return warnings;
}
