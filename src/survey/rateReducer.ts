/** Fewer samples a second where a recording has more than hearing needs: strikes are looked for at 22–48 kHz, whatever the recording's rate. */

export type RateReducer = {
  /** How many samples of the stream one reduced sample stands for; reduced sample m stands at stream sample m·factor. */
  readonly factor: number;
  readonly reducedRateHz: number;
  push(block: Float32Array): Float32Array;
};

/**
 * A windowed-sinc low-pass at 0.4 of the reduced rate (common practice), its delay taken out: the last few reduced samples come
 * with the next block. Up to 64 kHz nothing is changed.
 */
export function createRateReducer(sampleRateHz: number): RateReducer {
  const factor = Math.max(1, Math.floor(sampleRateHz / LOWEST_REDUCED_RATE_HZ));
  const reducedRateHz = sampleRateHz / factor;
  if (factor === 1) return { factor, reducedRateHz, push: (block) => block };
  const taps = lowPass(factor);
  const half = (taps.length - 1) / 2;
  let waiting = new Float32Array(half);
  return {
    factor,
    reducedRateHz,
    push(block) {
      const joined = new Float32Array(waiting.length + block.length);
      joined.set(waiting);
      joined.set(block, waiting.length);
      const count = Math.max(0, Math.floor((joined.length - taps.length) / factor) + 1);
      const out = new Float32Array(count);
      for (let index = 0; index < count; index++) out[index] = weigh(joined, index * factor, taps);
      waiting = joined.slice(count * factor);
      return out;
    },
  };
}

/** 44.1 kHz, so that 88.2, 96, 176.4 and 192 kHz come down to 44.1 or 48 kHz. */
const LOWEST_REDUCED_RATE_HZ = 44100;
/** Zero crossings of the sinc on each side: 24 gives about 50 dB of rejection above half the reduced rate, plenty to see a strike. */
const SINC_HALF_WIDTH = 12;

function lowPass(factor: number): Float64Array {
  const half = SINC_HALF_WIDTH * factor;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, index) => {
    const position = (0.8 * (index - half)) / factor;
    const sinc = position === 0 ? 1 : Math.sin(Math.PI * position) / (Math.PI * position);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * (index - half)) / (half + 1)));
  });
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return taps.map((tap) => tap / sum);
}

function weigh(samples: Float32Array, start: number, taps: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < taps.length; index++) sum += (taps[index] ?? 0) * (samples[start + index] ?? 0);
  return sum;
}
