/**
 * Cramér–Rao bound: no unbiased estimator of a frequency scatters less.
 */

/**
 * Bound on the standard deviation, in Hz, of the frequency of one damped real sinusoid A·e^(−dampingPerS·t)·cos(2πft + φ) in white
 * Gaussian noise of standard deviation `noiseRms`, all four parameters unknown, `durationS` long.
 *
 * Fisher information of the complex model with phase eliminated: J = (A²/σ²)·(2π)²·½·[S2 − S1²/S0] with S_p = Σ t^p·e^(−2αt) over
 * the samples. For no damping it is D. C. Rife and R. R. Boorstyn, IEEE Trans. IT 20 (1974) 591–598:
 * σ_f = (f_s/2π)·√(12/(η·N·(N²−1))), η = A²/(2σ²).
 * @example frequencyBoundHz({ amplitude: 1, dampingPerS: 0, noiseRms: Math.SQRT1_2 / 100, durationS: 1, sampleRateHz: 44100 }) // 2.625e-5
 */
export function frequencyBoundHz(tone: {
  readonly amplitude: number;
  readonly dampingPerS: number;
  readonly noiseRms: number;
  readonly durationS: number;
  readonly sampleRateHz: number;
}): number {
  const count = Math.round(tone.durationS * tone.sampleRateHz);
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  const step = Math.exp((-2 * tone.dampingPerS) / tone.sampleRateHz);
  let energy = 1;
  for (let n = 0; n < count; n++) {
    const t = n / tone.sampleRateHz;
    s0 += energy;
    s1 += energy * t;
    s2 += energy * t * t;
    energy *= step;
  }
  const information = ((2 * Math.PI * tone.amplitude) ** 2 / (2 * tone.noiseRms ** 2)) * (s2 - s1 ** 2 / s0);
  return 1 / Math.sqrt(information);
}
