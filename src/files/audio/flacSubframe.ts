/**
 * One block of samples as a FLAC subframe: what a fixed polynomial predictor of order 0 to 4 leaves over, in Rice codes.
 * Source: RFC 9639 (2024), section 9.2; the choice of order by the sum of what is left over is common practice of encoders.
 */
import type { BitWriter } from './bitWriter.ts';

/** Of the samples in the file. */
export const FLAC_BITS = 24;
const HIGHEST_ORDER = 4;
/** Rice parameters are told apart for stretches of 256 samples: a strike changes the level within one block. */
const PARTITION_ORDER = 4;
/** The five-bit parameters' escape code; never used here. */
const LARGEST_RICE_PARAMETER = 30;

const SUBFRAME_CONSTANT = 0;
const SUBFRAME_VERBATIM = 1;
const SUBFRAME_FIXED = 8;

/** @param block whole numbers of 24 bits, at least one */
export function putSubframe(writer: BitWriter, block: Int32Array): void {
  const first = block[0] ?? 0;
  if (block.every((sample) => sample === first)) {
    putHead(writer, SUBFRAME_CONSTANT, 0);
    writer.put(first, FLAC_BITS);
    return;
  }
  const unusedBits = lowBitsUnused(block);
  const samples = unusedBits === 0 ? block : block.map((sample) => sample >> unusedBits);
  const bitCount = FLAC_BITS - unusedBits;
  const { order, folded } = bestResidual(samples);
  const partitions = partitionsOf(folded, block.length, order);
  const isWorth = partitions.reduce((sum, { cost }) => sum + cost, 0) < bitCount * (block.length - order);
  if (!isWorth) {
    putHead(writer, SUBFRAME_VERBATIM, unusedBits);
    for (const sample of samples) writer.put(sample, bitCount);
    return;
  }
  putHead(writer, SUBFRAME_FIXED + order, unusedBits);
  for (const sample of samples.subarray(0, order)) writer.put(sample, bitCount);
  putResidual(writer, partitions);
}

function putHead(writer: BitWriter, kind: number, unusedBits: number): void {
  writer.put(0, 1);
  writer.put(kind, 6);
  writer.put(unusedBits === 0 ? 0 : 1, 1);
  if (unusedBits > 0) writer.putUnary(unusedBits - 1);
}

/** Sound of fewer bits, as of a 16-bit microphone, leaves its lowest bits at 0: those are not stored. */
function lowBitsUnused(block: Int32Array): number {
  const used = block.reduce((bits, sample) => bits | sample, 0);
  return used === 0 ? 0 : 31 - Math.clz32(used & -used);
}

type Residual = { readonly order: number; readonly folded: Uint32Array };

/** The differences of rising order, until another difference no longer makes them smaller. */
function bestResidual(samples: Int32Array): Residual {
  let best: { order: number; differences: Int32Array; size: number } | undefined;
  let differences = samples;
  for (let order = 0; order <= Math.min(HIGHEST_ORDER, samples.length - 1); order += 1) {
    if (order > 0) differences = differencesOf(differences);
    const size = sizeOf(differences, HIGHEST_ORDER - order);
    if (!best || size < best.size) best = { order, differences, size };
  }
  const { order = 0, differences: chosen = samples } = best ?? {};
  return { order, folded: Uint32Array.from(chosen, fold) };
}

function differencesOf(values: Int32Array): Int32Array {
  const differences = new Int32Array(values.length - 1);
  for (let index = 0; index < differences.length; index += 1)
    differences[index] = (values[index + 1] ?? 0) - (values[index] ?? 0);
  return differences;
}

/** @param from so that every order is judged by the same samples */
function sizeOf(values: Int32Array, from: number): number {
  let size = 0;
  for (let index = from; index < values.length; index += 1) size += Math.abs(values[index] ?? 0);
  return size;
}

/** 0, −1, 1, −2, 2 … become 0, 1, 2, 3, 4 … */
function fold(value: number): number {
  return ((value << 1) ^ (value >> 31)) >>> 0;
}

type Partition = { readonly folded: Uint32Array; readonly parameter: number; readonly cost: number };

function partitionsOf(folded: Uint32Array, blockLength: number, order: number): Partition[] {
  const isDivisible = blockLength % 2 ** PARTITION_ORDER === 0 && blockLength >> PARTITION_ORDER > order;
  const length = isDivisible ? blockLength >> PARTITION_ORDER : blockLength;
  const partitions: Partition[] = [];
  for (let start = -order; start < folded.length; start += length)
    partitions.push(partitionOf(folded.subarray(Math.max(0, start), start + length)));
  return partitions;
}

/** The parameter with the least bits; the cost is at most one bit a sample too high, never too low. */
function partitionOf(folded: Uint32Array): Partition {
  let sum = 0;
  for (const value of folded) sum += value;
  const costOf = (parameter: number) => 5 + folded.length * (parameter + 1) + sum / 2 ** parameter;
  let parameter = 0;
  while (parameter < LARGEST_RICE_PARAMETER && costOf(parameter + 1) < costOf(parameter)) parameter += 1;
  return { folded, parameter, cost: costOf(parameter) };
}

function putResidual(writer: BitWriter, partitions: readonly Partition[]): void {
  writer.put(1, 2); // parameters of five bits
  writer.put(partitions.length === 1 ? 0 : PARTITION_ORDER, 4);
  for (const { folded, parameter } of partitions) {
    writer.put(parameter, 5);
    for (const value of folded) {
      writer.putUnary(value >>> parameter);
      writer.put(value, parameter);
    }
  }
}
