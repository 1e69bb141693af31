/** Where in a stretch of sound the strike is, and where the tone stops being one free decay. */

const FRAME_S = 0.005;

/** Mean power of consecutive frames. */
function framePowers(samples: Float32Array, from: number, to: number, frameLength: number): Float64Array {
  const count = Math.max(0, Math.floor((to - from) / frameLength));
  const powers = new Float64Array(count);
  for (let frame = 0; frame < count; frame++) {
    let sum = 0;
    for (let i = from + frame * frameLength; i < from + (frame + 1) * frameLength; i++) sum += samples[i]! ** 2;
    powers[frame] = sum / frameLength;
  }
  return powers;
}

/**
 * Index of the strike: the first frame that stands 10 dB above the quietest and within 17 dB of the loudest. For recordings of
 * one note; a survey finds its strikes in another way. Undefined in silence.
 */
export function findStrike(samples: Float32Array, sampleRateHz: number): number | undefined {
  const frameLength = Math.max(1, Math.round(FRAME_S * sampleRateHz));
  const powers = framePowers(samples, 0, samples.length, frameLength);
  const loudest = powers.reduce((most, power) => Math.max(most, power), 0);
  if (loudest <= 0) return undefined;
  // Nearly the quietest: a bass tone may be as loud at its end as after the blow, and the lead short.
  const quiet = Float64Array.from(powers).sort()[Math.floor(powers.length / 33)] ?? 0;
  const first = powers.findIndex((power) => power > 0.02 * loudest && (power > 10 * quiet || quiet > 0.3 * loudest));
  return first < 0 ? 0 : first * frameLength;
}

/** A damper takes a tone down at least this fast, and this many times faster than the tone fell by itself before. */
const DAMPER_DB_PER_S = 50;
const DAMPER_STEEPER = 4;
/** A fall this deep, to the end of the stretch or to what follows, is a damper's and not a beat's. */
const DAMPER_DROP_DB = 7;
const RELEASE_FRAME_S = 0.02;
/** Frames over which a level is averaged, a fall is measured, and the tone's own fall before it. */
const SMOOTH_FRAMES = 3;
const FALL_FRAMES = 6;
const BEFORE_FRAMES = 20;

/** No key is let go sooner after the blow, and the tone's own first fall is steep. */
const FIRST_FRAME = 12;
/** What swells again by this much, within this time and clear of the noise, was a beat's trough. */
const SWELL_DB = 3;
const SWELL_FRAMES = 35;
const CLEAR_DB = 8;

/**
 * Index at which the damper fell, or endIndex where it did not. A beat's trough recovers, a damped string does not; a treble tone
 * that dies fast by itself did so before, too.
 */
export function findRelease(samples: Float32Array, onsetIndex: number, endIndex: number, sampleRateHz: number): number {
  const frameLength = Math.round(RELEASE_FRAME_S * sampleRateHz);
  const levels = smoothedLevelsDb(framePowers(samples, onsetIndex, endIndex, frameLength));
  const last = levels.length - 1;
  const loudestAfter = new Float64Array(levels.length + 1).fill(-200);
  for (let i = last; i >= 0; i--) loudestAfter[i] = Math.max(levels[i]!, loudestAfter[i + 1]!);
  for (let i = FIRST_FRAME; i < last; i++) {
    const reach = Math.min(FALL_FRAMES, last - i);
    const drop = levels[i]! - loudestAfter[i + reach]!;
    const slope = drop / (reach * RELEASE_FRAME_S);
    const span = Math.min(BEFORE_FRAMES, i);
    const ownSlope = Math.max(0, levels[i - span]! - levels[i]!) / (span * RELEASE_FRAME_S);
    const isSteep = drop > DAMPER_DROP_DB && slope > Math.max(DAMPER_DB_PER_S, DAMPER_STEEPER * ownSlope);
    if (isSteep && !swellsAfter(levels, i) && fallsOn(levels, i + reach)) {
      return onsetIndex + Math.max(1, i - SMOOTH_FRAMES) * frameLength;
    }
  }
  return endIndex;
}

/** A damper takes a tone down this much more in the next quarter of a second. */
const STILL_FALLING_DB = 8;

/** A damped tone goes on falling until it is noise; one that stays where a steep fall left it is beating. */
function fallsOn(levels: Float64Array, from: number): boolean {
  const later = from + 2 * FALL_FRAMES;
  if (later >= levels.length) return true;
  const floor = quietestTenth(levels);
  return levels[later]! < levels[from]! - STILL_FALLING_DB || levels[later]! < floor + 4;
}

function quietestTenth(levels: Float64Array): number {
  return Float64Array.from(levels).sort()[Math.floor(levels.length / 10)] ?? 0;
}

function swellsAfter(levels: Float64Array, from: number): boolean {
  const floor = quietestTenth(levels);
  let lowest = Infinity;
  for (let i = from; i < Math.min(levels.length, from + SWELL_FRAMES); i++) {
    lowest = Math.min(lowest, levels[i]!);
    if (levels[i]! > lowest + SWELL_DB && levels[i]! > floor + CLEAR_DB) return true;
  }
  return false;
}

/** Mean level of each frame and its neighbours, in dB. */
function smoothedLevelsDb(powers: Float64Array): Float64Array {
  return powers.map((_, i) => {
    const around = powers.subarray(Math.max(0, i - 1), Math.min(powers.length, i + SMOOTH_FRAMES - 1));
    return 10 * Math.log10(Math.max(around.reduce((sum, power) => sum + power, 0) / around.length, 1e-16));
  });
}

/**
 * How much of the tone's start is left out: the blow's own noise and, in the bass, the first sharpness of a string still swinging
 * wide. Six periods, at least 8 ms and at most 120 ms: in the treble the start is where the tone is.
 */
export function skipAfterStrikeS(partial1Hz: number): number {
  return Math.min(0.12, Math.max(0.008, 6 / partial1Hz));
}
