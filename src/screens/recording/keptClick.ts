/** A soft click that says: stored, go on. */

/** Shorter than a hammer's knock, so that it is no note to anyone. Chosen. */
const CLICK_S = 0.006;
/** Where ears are keen and a small loudspeaker speaks. Chosen. */
const CLICK_HZ = 1500;
/** Peak re full scale: −26 dB, well below a note that is played. Chosen. */
const CLICK_PEAK = 0.05;

/** A few turns of a sine that swell and fade (a Hann window), so that nothing snaps at either end. */
export function clickSamples(sampleRateHz: number): Float32Array<ArrayBuffer> {
  const count = Math.round(CLICK_S * sampleRateHz);
  return Float32Array.from({ length: count }, (_, index) => {
    const swell = 0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / count);
    return CLICK_PEAK * swell * Math.sin((2 * Math.PI * CLICK_HZ * (index + 0.5)) / sampleRateHz);
  });
}
