/**
 * Least-squares fit of a sum of damped sinusoids to a short complex series:
 * y_m ≈ Σ_k a_k·e^{(−damping_k + j·frequency_k)·m}, with complex amplitudes, frequencies in radians a value, dampings per value.
 *
 * In white Gaussian noise this is the maximum-likelihood estimate, whose covariance reaches the Cramér–Rao bound (Y.-X. Yao and
 * S. M. Pandit, IEEE Trans. SP 43 (1995) 878–885, for the damped case). Steps are Levenberg–Marquardt's (D. W. Marquardt,
 * J. SIAM 11 (1963) 431–441). The normal equations of at most 12 unknowns are solved here rather than by the matrix library,
 * which allocates more than it computes at this size.
 */
import { choleskySolve, invertSymmetric } from './smallSymmetric.ts';

export type Component = {
  readonly frequencyRad: number;
  readonly damping: number;
  readonly amplitudeRe: number;
  readonly amplitudeIm: number;
};

export type DampedFit = {
  readonly components: readonly Component[];
  /** Σ w·|residual|². */
  readonly residualEnergy: number;
  readonly hasConverged: boolean;
};

export type Series = {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Weight of each value, 0…1; missing means all one. */
  readonly weights?: Float64Array | undefined;
};

const PARAMETERS_PER_COMPONENT = 4;

/** Values e^{(−damping + j·frequency)·m} for m < length. */
export function basisOf(component: { frequencyRad: number; damping: number }, length: number): Series {
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  const size = Math.exp(-component.damping);
  const stepRe = size * Math.cos(component.frequencyRad);
  const stepIm = size * Math.sin(component.frequencyRad);
  let currentRe = 1;
  let currentIm = 0;
  for (let m = 0; m < length; m++) {
    re[m] = currentRe;
    im[m] = currentIm;
    const next = currentRe * stepRe - currentIm * stepIm;
    currentIm = currentRe * stepIm + currentIm * stepRe;
    currentRe = next;
  }
  return { re, im };
}

/** Series minus the model. */
export function residualOf(series: Series, components: readonly Component[]): Series {
  const re = Float64Array.from(series.re);
  const im = Float64Array.from(series.im);
  for (const component of components) {
    const basis = basisOf(component, re.length);
    const { amplitudeRe, amplitudeIm } = component;
    for (let m = 0; m < re.length; m++) {
      re[m]! -= amplitudeRe * basis.re[m]! - amplitudeIm * basis.im[m]!;
      im[m]! -= amplitudeRe * basis.im[m]! + amplitudeIm * basis.re[m]!;
    }
  }
  return { re, im, weights: series.weights };
}

export function energyOf(series: Series): number {
  let energy = 0;
  for (let m = 0; m < series.re.length; m++) {
    const weight = series.weights ? series.weights[m]! : 1;
    energy += weight * (series.re[m]! ** 2 + series.im[m]! ** 2);
  }
  return energy;
}

/** Best complex amplitudes for given frequencies and dampings. Undefined where two components cannot be told apart. */
export function withBestAmplitudes(
  series: Series,
  poles: readonly { frequencyRad: number; damping: number }[],
): Component[] | undefined {
  const size = 2 * poles.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const bases = poles.map((pole) => basisOf(pole, series.re.length));
  for (let i = 0; i < poles.length; i++) {
    const projection = innerProduct(bases[i]!, series, series.weights);
    right[2 * i] = projection.re;
    right[2 * i + 1] = projection.im;
    for (let j = 0; j < poles.length; j++) {
      const product = innerProduct(bases[i]!, bases[j]!, series.weights);
      matrix[2 * i * size + 2 * j] = product.re;
      matrix[2 * i * size + 2 * j + 1] = -product.im;
      matrix[(2 * i + 1) * size + 2 * j] = product.im;
      matrix[(2 * i + 1) * size + 2 * j + 1] = product.re;
    }
  }
  const amplitudes = choleskySolve(matrix, right, size);
  if (!amplitudes) return undefined;
  return poles.map((pole, i) => ({
    frequencyRad: pole.frequencyRad,
    damping: pole.damping,
    amplitudeRe: amplitudes[2 * i]!,
    amplitudeIm: amplitudes[2 * i + 1]!,
  }));
}

/** Σ w·conj(a)·b. */
function innerProduct(a: Series, b: Series, weights: Float64Array | undefined): Complex {
  let re = 0;
  let im = 0;
  for (let m = 0; m < a.re.length; m++) {
    const weight = weights ? weights[m]! : 1;
    re += weight * (a.re[m]! * b.re[m]! + a.im[m]! * b.im[m]!);
    im += weight * (a.re[m]! * b.im[m]! - a.im[m]! * b.re[m]!);
  }
  return { re, im };
}

/** Σ w·m^power·conj(a)·b for powers 0, 1 and 2, in one pass. */
function moments(a: Series, b: Series, weights: Float64Array | undefined): [Complex, Complex, Complex] {
  let re0 = 0;
  let im0 = 0;
  let re1 = 0;
  let im1 = 0;
  let re2 = 0;
  let im2 = 0;
  for (let m = 0; m < a.re.length; m++) {
    const weight = weights ? weights[m]! : 1;
    const re = weight * (a.re[m]! * b.re[m]! + a.im[m]! * b.im[m]!);
    const im = weight * (a.re[m]! * b.im[m]! - a.im[m]! * b.re[m]!);
    re0 += re;
    im0 += im;
    re1 += m * re;
    im1 += m * im;
    re2 += m * m * re;
    im2 += m * m * im;
  }
  return [
    { re: re0, im: im0 },
    { re: re1, im: im1 },
    { re: re2, im: im2 },
  ];
}

/**
 * The normal equations at the given components. Unknowns per component, in this order: frequency, damping, and the
 * amplitude's relative change, real and imaginary. Relative, so that all four have a like scale.
 */
function normalEquations(series: Series, components: readonly Component[], residual: Series) {
  const size = PARAMETERS_PER_COMPONENT * components.length;
  const matrix = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  const waves = components.map((component) => scaledBasis(component, series.re.length));
  for (let i = 0; i < components.length; i++) {
    const [g0, g1] = moments(waves[i]!, residual, series.weights);
    // Derivatives of the model: j·m·wave, −m·wave, wave, j·wave.
    gradient[4 * i] = g1.im;
    gradient[4 * i + 1] = -g1.re;
    gradient[4 * i + 2] = g0.re;
    gradient[4 * i + 3] = g0.im;
    for (let j = i; j < components.length; j++) {
      fillBlock(matrix, size, i, j, moments(waves[i]!, waves[j]!, series.weights));
    }
  }
  return { matrix, gradient, size };
}

type Complex = { readonly re: number; readonly im: number };

function scaledBasis(component: Component, length: number): Series {
  const basis = basisOf(component, length);
  const { amplitudeRe, amplitudeIm } = component;
  for (let m = 0; m < length; m++) {
    const re = basis.re[m]! * amplitudeRe - basis.im[m]! * amplitudeIm;
    basis.im[m] = basis.re[m]! * amplitudeIm + basis.im[m]! * amplitudeRe;
    basis.re[m] = re;
  }
  return basis;
}

/** Real part of conj(derivative_p of i)·(derivative_q of j), for the four derivatives of each. */
function fillBlock(matrix: Float64Array, size: number, i: number, j: number, products: [Complex, Complex, Complex]) {
  // A derivative is unit·m^power·wave: unit j, −1, 1, j and power 1, 1, 0, 0.
  for (let p = 0; p < 4; p++) {
    for (let q = 0; q < 4; q++) {
      const { re, im } = products[(POWERS[p]! + POWERS[q]!) as 0 | 1 | 2];
      const unitRe = UNIT_RE[p]! * UNIT_RE[q]! + UNIT_IM[p]! * UNIT_IM[q]!;
      const unitIm = UNIT_RE[p]! * UNIT_IM[q]! - UNIT_IM[p]! * UNIT_RE[q]!;
      const value = unitRe * re - unitIm * im;
      matrix[(4 * i + p) * size + 4 * j + q] = value;
      matrix[(4 * j + q) * size + 4 * i + p] = value;
    }
  }
}

const UNIT_RE = [0, -1, 1, 0];
const UNIT_IM = [1, 0, 0, 1];
const POWERS = [1, 1, 0, 0];

export type FitLimits = {
  readonly maxIterations: number;
  /** Dampings outside are pushed back. */
  readonly leastDamping: number;
  readonly mostDamping: number;
};

/** A step that raises twice the log likelihood by less than about this is the last. */
const SETTLED = 1e-5;

/** Refines `start` until the residual no longer falls. */
export function fitDampedSinusoids(series: Series, start: readonly Component[], limits: FitLimits): DampedFit {
  let components = start.map((component) => ({ ...component }));
  let residual = residualOf(series, components);
  let energy = energyOf(residual);
  let damp = 1e-3;
  let hasConverged = false;
  for (let iteration = 0; iteration < limits.maxIterations && !hasConverged; iteration++) {
    const { matrix, gradient, size } = normalEquations(series, components, residual);
    let isBetter = false;
    for (let attempt = 0; attempt < 6 && !isBetter; attempt++) {
      const step = choleskySolve(withDampedDiagonal(matrix, size, damp), gradient, size);
      const next = step && stepped(components, step, limits);
      const nextResidual = next && residualOf(series, next);
      const nextEnergy = nextResidual ? energyOf(nextResidual) : Infinity;
      if (next && nextResidual && nextEnergy <= energy) {
        isBetter = true;
        hasConverged = energy - nextEnergy <= (SETTLED / series.re.length) * energy;
        components = next;
        residual = nextResidual;
        energy = nextEnergy;
        damp = Math.max(damp / 8, 1e-9);
      } else {
        damp *= 8;
      }
    }
    if (!isBetter) hasConverged = true;
  }
  return { components, residualEnergy: energy, hasConverged };
}

function withDampedDiagonal(matrix: Float64Array, size: number, damp: number): Float64Array {
  const damped = Float64Array.from(matrix);
  for (let i = 0; i < size; i++) damped[i * size + i]! *= 1 + damp;
  return damped;
}

function stepped(components: readonly Component[], step: Float64Array, limits: FitLimits): Component[] {
  return components.map((component, k) => {
    const damping = component.damping + step[4 * k + 1]!;
    const growRe = 1 + step[4 * k + 2]!;
    const growIm = step[4 * k + 3]!;
    return {
      frequencyRad: component.frequencyRad + step[4 * k]!,
      damping: Math.min(limits.mostDamping, Math.max(limits.leastDamping, damping)),
      amplitudeRe: component.amplitudeRe * growRe - component.amplitudeIm * growIm,
      amplitudeIm: component.amplitudeRe * growIm + component.amplitudeIm * growRe,
    };
  });
}

/**
 * Covariance of the unknowns for a residual variance of one per real value: the inverse of the normal matrix, size 4·count,
 * in the order frequency, damping, relative amplitude (real, imaginary). Undefined where the fit is degenerate.
 */
export function covarianceOf(series: Series, components: readonly Component[]): Float64Array | undefined {
  const residual = { re: new Float64Array(series.re.length), im: new Float64Array(series.re.length) };
  const { matrix, size } = normalEquations(series, components, residual);
  return invertSymmetric(matrix, size);
}
