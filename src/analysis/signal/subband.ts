/**
 * One partial's neighbourhood as a slow complex signal.
 *
 * The sound is shifted so that `centreHz` becomes zero frequency, then smoothed by three moving averages as long as one
 * period of the spacing between partials (a cascaded integrator–comb of order three, E. B. Hogenauer, IEEE Trans. ASSP 29
 * (1981) 155–162), whose zeros fall on the neighbouring partials, then block-averaged once more where the rate is still
 * high. A damped sinusoid inside stays a damped sinusoid; its change of amplitude is known exactly (`subbandGain`). Only two
 * periods of sound are lost at each end, which matters in the treble, where the start of the tone holds the information.
 */

export type Subband = {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly rateHz: number;
  readonly centreHz: number;
  readonly sampleRateHz: number;
  /** Length of each moving average, in input samples. */
  readonly averageLength: number;
  /** Length of the last block average, in values of the first stage. */
  readonly blockLength: number;
};

export type SubbandRequest = {
  readonly sampleRateHz: number;
  /** First and one past last input sample. */
  readonly startIndex: number;
  readonly endIndex: number;
  readonly centreHz: number;
  /** Distance to the next partial. */
  readonly spacingHz: number;
  /** The result's rate is at least this, where the spacing allows. */
  readonly leastRateHz: number;
};

/** Weights of three cascaded moving averages of `length`: 3·length − 2 values with sum one, padded to 3·length. */
function cascadeWeights(length: number): Float64Array {
  const weights = new Float64Array(3 * length);
  weights[0] = 1;
  for (let stage = 0; stage < 3; stage++) {
    const before = Float64Array.from(weights);
    let sum = 0;
    for (let i = 0; i < weights.length; i++) {
      sum += before[i]! - (i >= length ? before[i - length]! : 0);
      weights[i] = sum / length;
    }
  }
  return weights;
}

const weightsByLength = new Map<number, Float64Array>();

function weightsOf(length: number): Float64Array {
  let weights = weightsByLength.get(length);
  if (!weights) {
    weights = cascadeWeights(length);
    if (weightsByLength.size > 400) weightsByLength.clear();
    weightsByLength.set(length, weights);
  }
  return weights;
}

/** Value m of the result covers input from startIndex + m·stride, with stride = averageLength·blockLength. */
export function extractSubband(samples: Float32Array | Float64Array, request: SubbandRequest): Subband {
  const { sampleRateHz, centreHz, startIndex, endIndex } = request;
  const averageLength = Math.max(1, Math.round(sampleRateHz / request.spacingHz));
  const stageRateHz = sampleRateHz / averageLength;
  const blockLength = Math.max(1, Math.floor(stageRateHz / request.leastRateHz));
  const stage = smoothAndThin(samples, startIndex, endIndex, centreHz / sampleRateHz, averageLength);
  const { re, im } = blockAverage(stage.re, stage.im, blockLength);
  return { re, im, rateHz: stageRateHz / blockLength, centreHz, sampleRateHz, averageLength, blockLength };
}

type ComplexSeries = { readonly re: Float64Array; readonly im: Float64Array };

/** Heterodyne and three-fold moving average, one value per `length` input samples. */
function smoothAndThin(
  samples: Float32Array | Float64Array,
  startIndex: number,
  endIndex: number,
  cyclesPerSample: number,
  length: number,
): ComplexSeries {
  const blockCount = Math.floor((endIndex - startIndex) / length);
  const count = Math.max(0, blockCount - 2);
  const re = new Float64Array(count + 2);
  const im = new Float64Array(count + 2);
  const weights = weightsOf(length);
  const stepRe = Math.cos(2 * Math.PI * cyclesPerSample);
  const stepIm = -Math.sin(2 * Math.PI * cyclesPerSample);
  for (let block = 0; block < blockCount; block++) {
    const first = startIndex + block * length;
    // The rotation starts afresh in each block, so that rounding does not build up.
    const cycles = ((first - startIndex) * cyclesPerSample) % 1;
    let turnRe = Math.cos(2 * Math.PI * cycles);
    let turnIm = -Math.sin(2 * Math.PI * cycles);
    let re0 = 0;
    let im0 = 0;
    let re1 = 0;
    let im1 = 0;
    let re2 = 0;
    let im2 = 0;
    for (let p = 0; p < length; p++) {
      const x = samples[first + p]!;
      const a = x * turnRe;
      const b = x * turnIm;
      const w0 = weights[p]!;
      const w1 = weights[length + p]!;
      const w2 = weights[2 * length + p]!;
      re0 += w0 * a;
      im0 += w0 * b;
      re1 += w1 * a;
      im1 += w1 * b;
      re2 += w2 * a;
      im2 += w2 * b;
      const next = turnRe * stepRe - turnIm * stepIm;
      turnIm = turnRe * stepIm + turnIm * stepRe;
      turnRe = next;
    }
    if (block < count) {
      re[block]! += re0;
      im[block]! += im0;
    }
    if (block >= 1 && block - 1 < count) {
      re[block - 1]! += re1;
      im[block - 1]! += im1;
    }
    if (block >= 2 && block - 2 < count) {
      re[block - 2]! += re2;
      im[block - 2]! += im2;
    }
  }
  return { re: re.subarray(0, count), im: im.subarray(0, count) };
}

function blockAverage(re: Float64Array, im: Float64Array, blockLength: number): ComplexSeries {
  if (blockLength === 1) return { re, im };
  const count = Math.floor(re.length / blockLength);
  const outRe = new Float64Array(count);
  const outIm = new Float64Array(count);
  for (let m = 0; m < count; m++) {
    let sumRe = 0;
    let sumIm = 0;
    for (let i = m * blockLength; i < (m + 1) * blockLength; i++) {
      sumRe += re[i]!;
      sumIm += im[i]!;
    }
    outRe[m] = sumRe / blockLength;
    outIm[m] = sumIm / blockLength;
  }
  return { re: outRe, im: outIm };
}

/**
 * Size of the factor by which the smoothing changes the amplitude of a damped sinusoid that lies `offsetHz` from the centre and
 * decays with e^(−dampingPerS·t).
 */
export function subbandGain(subband: Subband, offsetHz: number, dampingPerS: number): number {
  const { sampleRateHz, averageLength, blockLength } = subband;
  const angle = (2 * Math.PI * offsetHz) / sampleRateHz;
  const decay = dampingPerS / sampleRateHz;
  const average = meanOfPowers(angle, decay, averageLength);
  const block = meanOfPowers(angle * averageLength, decay * averageLength, blockLength);
  return average ** 3 * block;
}

/** |(1/length)·Σ q^k| for k < length with q = e^(−decay + j·angle). */
function meanOfPowers(angle: number, decay: number, length: number): number {
  if (length === 1) return 1;
  if (Math.abs(angle) < 1e-12 && Math.abs(decay) < 1e-12) return 1;
  const magnitude = Math.exp(-decay * length);
  const top = Math.hypot(1 - magnitude * Math.cos(angle * length), magnitude * Math.sin(angle * length));
  const single = Math.exp(-decay);
  const bottom = Math.hypot(1 - single * Math.cos(angle), single * Math.sin(angle));
  return top / (length * bottom);
}

/**
 * White noise in the sound is not quite white in the subband. Returns the noise's density at `offsetHz`, relative to its mean
 * over the band: what a residual's variance has to be multiplied by for a component that sits there.
 */
export function noiseDensityRatio(subband: Subband, offsetHz: number): number {
  const { averageLength, blockLength, rateHz } = subband;
  const density = (frequencyHz: number): number => {
    let sum = 0;
    for (let alias = -3; alias <= 3; alias++) {
      const hz = frequencyHz + alias * rateHz;
      sum += subbandGain({ ...subband, averageLength, blockLength }, hz, 0) ** 2;
    }
    return sum;
  };
  let mean = 0;
  for (let i = 0; i < 16; i++) mean += density(((i + 0.5) / 16 - 0.5) * rateHz) / 16;
  return density(offsetHz) / mean;
}
