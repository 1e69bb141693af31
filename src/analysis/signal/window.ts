/**
 * Tapering windows (F. J. Harris, Proc. IEEE 66 (1978) 51–83), periodic form, length `size`.
 */

/** Highest side lobe −92 dB, main lobe eight bins wide: weak partials beside strong ones stay visible. */
export function blackmanHarris(size: number): Float64Array {
  const window = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const phase = (2 * Math.PI * i) / size;
    window[i] = 0.35875 - 0.48829 * Math.cos(phase) + 0.14128 * Math.cos(2 * phase) - 0.01168 * Math.cos(3 * phase);
  }
  return window;
}
