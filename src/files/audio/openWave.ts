/** A WAV file as a stream of samples: a recording of any length is read in pieces and never held whole. */
import type { AudioOutcome, AudioWarning } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { mixWarnings } from './mixToMono.ts';
import { readWaveHeader, type WaveHeader } from './waveHeader.ts';
import { decodeWaveFrames } from './waveSamples.ts';

/** About a second and a half at 44.1 kHz: few reads, little memory. */
const FRAMES_PER_BLOCK = 65536;
const MOST_BYTES_PER_BLOCK = 2 ** 24;

export async function openWave(source: ByteSource): Promise<AudioOutcome> {
  const outcome = await readWaveHeader(source);
  if (!outcome.opened) return outcome;
  const { header } = outcome;
  const warnings = [...header.warnings, ...mixWarnings(header.channelCount)];
  return {
    opened: true,
    audio: {
      format: 'WAV',
      sampleRateHz: header.sampleRateHz,
      channelCount: header.channelCount,
      statedDurationS: header.dataBytes / header.frameBytes / header.sampleRateHz,
      warnings,
      blocks: () => waveBlocks(source, header, warnings),
    },
  };
}

async function* waveBlocks(source: ByteSource, header: WaveHeader, warnings: AudioWarning[]) {
  const end = header.dataOffset + header.dataBytes;
  const mostFrames = Math.max(1, Math.floor(MOST_BYTES_PER_BLOCK / header.frameBytes));
  const step = Math.min(FRAMES_PER_BLOCK, mostFrames) * header.frameBytes;
  let notNumberCount = 0;
  for (let offset = header.dataOffset; offset < end; offset += step) {
    const wanted = Math.min(step, end - offset);
    const bytes = await source.read(offset, wanted);
    const decoded = decodeWaveFrames(bytes, header);
    notNumberCount += decoded.notNumberCount;
    if (decoded.samples.length > 0) yield decoded.samples;
    if (bytes.length < wanted) {
      warnings.push({ kind: 'truncated', message: 'the file became shorter while it was being read' });
      break;
    }
  }
  if (notNumberCount > 0)
    warnings.push({
      kind: 'not-a-number',
      message: `${notNumberCount} samples were no numbers and were taken as silence`,
    });
}
