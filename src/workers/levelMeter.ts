/** Level for the eye: peak and root mean square over each tenth of a second. */

const INTERVAL_S = 0.1;
/** A converter at its stop gives ±1 or one step less (16 bit: 0.99997). */
const CLIPPED_FROM = 0.9999;

export type Level = { readonly peakDbfs: number; readonly rmsDbfs: number; readonly isClipped: boolean };
export type LevelMeter = { readonly push: (block: Float32Array) => Level[] };

/** Silence is −Infinity dBFS. `rmsDbfs`: a full-scale sine reads 0, as its peak does. */
export function createLevelMeter(sampleRateHz: number): LevelMeter {
  const intervalSamples = Math.round(INTERVAL_S * sampleRateHz);
  let peak = 0;
  let squares = 0;
  let sampleCount = 0;
  return {
    push: (block) => {
      const levels: Level[] = [];
      for (const sample of block) {
        peak = Math.max(peak, Math.abs(sample));
        squares += sample * sample;
        sampleCount += 1;
        if (sampleCount < intervalSamples) continue;
        const rmsDbfs = 10 * Math.log10((2 * squares) / sampleCount);
        levels.push({ peakDbfs: 20 * Math.log10(peak), rmsDbfs, isClipped: peak >= CLIPPED_FROM });
        peak = 0;
        squares = 0;
        sampleCount = 0;
      }
      return levels;
    },
  };
}
