/** Where exactly a strike is, once it is known that there is one nearby, and which partials came with it. */
import { createFrameSpectrum, type FrameSpectrum } from './frameSpectrum.ts';
import { beginning, type PowerLines } from './risingPower.ts';
import { bandEdgesHz, bandPowers, HOPS_PER_S, SILENT_POWER } from './soundBands.ts';

export type StrikeLocator = {
  /** How many samples must be there before and after the guess. */
  readonly reachBefore: number;
  readonly reachAfter: number;
  /**
   * @param samples up to reachBefore before the guess and reachAfter after it
   * @param tonesHz the partials that came with the strike
   * @param quietHops how much at the beginning is surely from before the strike
   * @returns the strike's index in `samples`, and how far the partials rose there from what was before
   */
  locate(samples: Float32Array, tonesHz: readonly number[], quietHops: number): StrikePosition;
  /** How far the partials stand out of what is beside them in the 43 ms from `index` on, in dB: a few in a knock, many in a tone. */
  prominenceDb(samples: Float32Array, index: number, tonesHz: readonly number[]): number;
};

export type StrikePosition = {
  readonly index: number;
  readonly riseDb: number;
  /** Time from a quarter to three quarters of the power: some 9 ms, the frame's own, for a strike, longer for a beat. */
  readonly riseTimeS: number;
};

/**
 * In two steps. The new partials say to some 10 ms where they begin, whatever else is heard there. Within that, the bands that
 * rise say it to a few ms, where they rise clearly. Both times it is the share of the strike's power that has come in: the
 * strike is where it begins to leave zero on its way to the whole, so that a slow attack is found at its beginning.
 */
export function createStrikeLocator(sampleRateHz: number): StrikeLocator {
  const hop = Math.round(sampleRateHz / HOPS_PER_S);
  const edges = bandEdgesHz(sampleRateHz);
  const toneSpectrum = createFrameSpectrum(TONE_FRAME_HOPS * hop, sampleRateHz);
  const bandSpectrum = createFrameSpectrum(BAND_FRAME_HOPS * hop, sampleRateHz);
  const tonePower = new Float64Array(toneSpectrum.fftSize / 2);
  const bandPower = new Float64Array(Math.ceil((edges.at(-1) ?? 0) / bandSpectrum.binHz) + 2);
  const reachBefore = TONE_BEFORE_HOPS * hop;
  const reachAfter = TONE_AFTER_HOPS * hop;

  const toneLines = (samples: Float32Array, tonesHz: readonly number[]) =>
    linesOver(samples, hop, TONE_FRAME_HOPS * hop, tonesHz.length, (start, out) => {
      toneSpectrum.read(samples, start, tonePower);
      for (const [line, hz] of tonesHz.entries()) out[line] = tonePower[Math.round(hz / toneSpectrum.binHz)] ?? 0;
    });
  const lineDb = (bin: number) => 10 * Math.log10((tonePower[bin] ?? 0) + SILENT_POWER);
  const bandStep = Math.max(1, Math.round(hop / 4));
  const bandLines = (samples: Float32Array) =>
    linesOver(samples, bandStep, BAND_FRAME_HOPS * hop, edges.length - 1, (start, out) =>
      readBands(bandSpectrum, samples, start, bandPower, edges, out),
    );
  return {
    reachBefore,
    reachAfter,
    prominenceDb(samples, index, tonesHz) {
      toneSpectrum.read(samples, index, tonePower);
      const each = tonesHz.map((hz) => {
        const bin = Math.round(hz / toneSpectrum.binHz);
        return lineDb(bin) - Math.min(lineDb(bin - BESIDE_BINS), lineDb(bin + BESIDE_BINS));
      });
      return each.reduce((sum, db) => sum + db, 0) / Math.max(1, each.length);
    },
    locate(samples, tonesHz, quietHops) {
      const byTones = beginning(toneLines(samples, tonesHz), quietHops);
      const coarse = Math.round((byTones.frame + WINDOW_LEAD * TONE_FRAME_HOPS) * hop);
      const from = Math.max(0, coarse - BAND_BEFORE_HOPS * hop);
      const near = samples.subarray(from, coarse + BAND_AFTER_HOPS * hop);
      const byBands = beginning(bandLines(near), BAND_QUIET_FRAMES);
      const fine = from + Math.round(byBands.frame * bandStep + WINDOW_LEAD * BAND_FRAME_HOPS * hop);
      return {
        index: byBands.riseDb >= CLEAR_RISE_DB ? fine : coarse,
        riseDb: byTones.riseDb,
        riseTimeS: byTones.riseFrames / HOPS_PER_S,
      };
    },
  };
}

const TONE_FRAME_HOPS = 8;
const TONE_BEFORE_HOPS = 32;
const TONE_AFTER_HOPS = 44;
const BAND_FRAME_HOPS = 2;
const BAND_BEFORE_HOPS = 12;
const BAND_AFTER_HOPS = 8;
const BAND_QUIET_FRAMES = 16;
const CLEAR_RISE_DB = 7;
/** Outside the main lobe of a partial. */
const BESIDE_BINS = 3;
/** A frame under a Hann window holds BEGUN_SHARE of a step's power once the step lies 0.70 of the frame into it. */
const WINDOW_LEAD = 0.7;

function linesOver(
  samples: Float32Array,
  step: number,
  frameLength: number,
  lineCount: number,
  read: (start: number, out: Float64Array) => void,
): PowerLines {
  const frameCount = Math.max(1, Math.floor((samples.length - frameLength) / step) + 1);
  const powers = Array.from({ length: lineCount }, () => new Float64Array(frameCount));
  const out = new Float64Array(lineCount);
  for (let frame = 0; frame < frameCount; frame++) {
    read(frame * step, out);
    for (const [line, power] of powers.entries()) power[frame] = out[line] ?? 0;
  }
  return { powers, frameCount };
}

function readBands(
  spectrum: FrameSpectrum,
  samples: Float32Array,
  start: number,
  power: Float64Array,
  edges: readonly number[],
  out: Float64Array,
): void {
  spectrum.read(samples, start, power);
  bandPowers(power, spectrum.binHz, edges, out);
}
