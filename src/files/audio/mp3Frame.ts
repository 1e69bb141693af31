/**
 * The head of one frame of MPEG sound. Source: ISO/IEC 11172-3:1993, 2.4.1.3 and 2.4.2.3 (MPEG-1), ISO/IEC 13818-3 (half rates);
 * the frame count in the first frame ("Xing" or "Info") is common practice of encoders.
 */

export type Mp3Frame = {
  readonly layer: 1 | 2 | 3;
  readonly isHalfRate: boolean;
  readonly sampleRateHz: number;
  readonly channelCount: 1 | 2;
  readonly byteCount: number;
  /** Per channel. */
  readonly sampleCount: number;
};

const KBIT_PER_S = {
  1: [0, 32, 64, 96, 128, 160, 192, 224, 256, 288, 320, 352, 384, 416, 448],
  2: [0, 32, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320, 384],
  3: [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320],
} as const;
const HALF_RATE_KBIT_PER_S = {
  1: [0, 32, 48, 56, 64, 80, 96, 112, 128, 144, 160, 176, 192, 224, 256],
  2: [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160],
  3: [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160],
} as const;
const SAMPLE_RATES_HZ = [44100, 48000, 32000];

/** Undefined where no frame begins, or one whose length cannot be known from its head. */
export function mp3FrameAt(bytes: Uint8Array, at: number): Mp3Frame | undefined {
  const [sync = 0, kind = 0, rates = 0, mode = 0] = bytes.subarray(at, at + 4);
  if (at + 4 > bytes.length || sync !== 0xff || (kind & 0xe0) !== 0xe0) return undefined;
  const version = (kind >> 3) & 3; // 0: MPEG-2.5, 2: MPEG-2, 3: MPEG-1
  const layer = 4 - ((kind >> 1) & 3);
  const baseRateHz = SAMPLE_RATES_HZ[(rates >> 2) & 3];
  if (version === 1 || (layer !== 1 && layer !== 2 && layer !== 3) || baseRateHz === undefined) return undefined;
  const isHalfRate = version !== 3;
  const kbitPerS = (isHalfRate ? HALF_RATE_KBIT_PER_S : KBIT_PER_S)[layer][rates >> 4];
  if (kbitPerS === undefined || kbitPerS === 0) return undefined;
  const sampleRateHz = version === 3 ? baseRateHz : version === 2 ? baseRateHz / 2 : baseRateHz / 4;
  const sampleCount = layer === 1 ? 384 : layer === 3 && isHalfRate ? 576 : 1152;
  const padding = ((rates >> 1) & 1) * (layer === 1 ? 4 : 1);
  const slotBytes = layer === 1 ? 4 : 1;
  const slotCount = Math.floor((sampleCount / 8 / slotBytes) * ((1000 * kbitPerS) / sampleRateHz));
  const byteCount = slotCount * slotBytes + padding;
  return { layer, isHalfRate, sampleRateHz, channelCount: mode >> 6 === 3 ? 1 : 2, byteCount, sampleCount };
}

/** How many frames the encoder says it wrote; null where it does not. */
export function statedFrameCount(bytes: Uint8Array, at: number, frame: Mp3Frame): number | null {
  const sideBytes = frame.isHalfRate ? (frame.channelCount === 1 ? 9 : 17) : frame.channelCount === 1 ? 17 : 32;
  const tag = bytes.subarray(at + 4 + sideBytes, at + 4 + sideBytes + 12);
  const letters = String.fromCharCode(...tag.subarray(0, 4));
  if (tag.length < 12 || (letters !== 'Xing' && letters !== 'Info') || ((tag[7] ?? 0) & 1) === 0) return null;
  return new DataView(tag.buffer, tag.byteOffset, tag.byteLength).getUint32(8);
}
