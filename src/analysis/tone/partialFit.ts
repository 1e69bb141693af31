/**
 * One partial of one take: the damped sinusoids in its neighbourhood, in Hz and seconds, with their covariance, and the frequency
 * that is kept as the partial's.
 */
import { type ComponentSearch, searchComponents } from '../signal/componentSearch.ts';
import { covarianceOf, energyOf } from '../signal/dampedSinusoids.ts';
import { extractSubband, noiseDensityRatio, type Subband, subbandGain } from '../signal/subband.ts';

/** A damped sinusoid A·e^(−dampingPerS·t)·cos(…) at the start of the analysed stretch. */
export type FittedComponent = {
  readonly hz: number;
  readonly standardUncertaintyHz: number;
  readonly dampingPerS: number;
  /** Relative to full scale. */
  readonly amplitude: number;
  /** Uncertainty of the amplitude, relative. */
  readonly relativeUncertainty: number;
};

export type PartialFit = {
  readonly partialNumber: number;
  readonly hz: number;
  readonly standardUncertaintyHz: number;
  /** Strongest (energy in the first second) first. */
  readonly components: readonly FittedComponent[];
  /** covarianceHz[i][j] of the components' frequencies, in Hz². */
  readonly covarianceHz: readonly (readonly number[])[];
  readonly snrDb: number;
  /** How long the partial stands above the noise of its band. */
  readonly audibleS: number;
  /** Twice the log likelihood gained by the components after the first. */
  readonly evidence: number;
  /** Noise in the band as the standard deviation of one input sample, white-noise equivalent, relative to full scale. */
  readonly noiseRms: number;
  /** Share of the band's energy, beyond the noise that the fit leaves, that the components account for, 0…1. */
  readonly explainedShare: number;
  readonly subband: Subband;
  readonly usedLength: number;
};

export type PartialRequest = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly startIndex: number;
  readonly endIndex: number;
  readonly partialNumber: number;
  readonly predictedHz: number;
  readonly spacingHz: number;
  /** A component further from the prediction is not this partial's. */
  readonly gateHz: number;
  readonly leastRateHz: number;
};

/** Beats of interest are at most this fast; mistuned strings at most this far apart. */
const BEAT_REACH_HZ = 8;
const MISTUNING_REACH = 0.012;

/** Undefined where no component stands out within the gate. */
export function fitPartial(request: PartialRequest): PartialFit | undefined {
  const subband = extractSubband(request.samples, {
    sampleRateHz: request.sampleRateHz,
    startIndex: request.startIndex,
    endIndex: request.endIndex,
    centreHz: request.predictedHz,
    spacingHz: request.spacingHz,
    leastRateHz: request.leastRateHz,
  });
  const usedLength = audibleLength(subband);
  const series = { re: subband.re.subarray(0, usedLength), im: subband.im.subarray(0, usedLength) };
  const reachHz = request.gateHz + BEAT_REACH_HZ + MISTUNING_REACH * request.predictedHz;
  const bandRad = Math.min(0.8 * Math.PI, (2 * Math.PI * reachHz) / subband.rateHz);
  const found = searchComponents(series, { mostComponents: 3, bandRad, evidenceMargin: 12 });
  return found && describe(request, subband, usedLength, found);
}

function describe(
  request: PartialRequest,
  subband: Subband,
  usedLength: number,
  found: ComponentSearch,
): PartialFit | undefined {
  const { rateHz, centreHz } = subband;
  const series = {
    re: subband.re.subarray(0, usedLength),
    im: subband.im.subarray(0, usedLength),
    weights: found.weights,
  };
  const count = found.fit.components.length;
  const covariance = covarianceOf(series, found.fit.components);
  if (!covariance) return undefined;
  const hzPerRad = rateHz / (2 * Math.PI);
  const all = found.fit.components.map((component, i) => {
    const offsetHz = component.frequencyRad * hzPerRad;
    const density = found.variance * noiseDensityRatio(subband, offsetHz);
    const dampingPerS = component.damping * rateHz;
    // A real tone of amplitude A shows as a complex one of amplitude A/2.
    const amplitude =
      (2 * Math.hypot(component.amplitudeRe, component.amplitudeIm)) / subbandGain(subband, offsetHz, dampingPerS);
    return {
      index: i,
      density,
      hz: centreHz + offsetHz,
      standardUncertaintyHz: Math.sqrt(density * covariance[4 * i * (4 * count) + 4 * i]!) * hzPerRad,
      dampingPerS,
      amplitude,
      relativeUncertainty: Math.sqrt(density * covariance[(4 * i + 2) * (4 * count) + 4 * i + 2]!),
    };
  });
  const own = ownComponents(all, request);
  const strongest = own[0];
  if (!strongest || strongest.relativeUncertainty > LEAST_DETECTED) return undefined;
  const covarianceHz = own.map((a) =>
    own.map(
      (b) =>
        Math.sqrt(a.density * b.density) * covariance[4 * a.index * (4 * count) + 4 * b.index]! * hzPerRad * hzPerRad,
    ),
  );
  const share = pitchShares(own);
  const hz = own.reduce((sum, component, i) => sum + share[i]! * component.hz, 0);
  const variance = share.reduce(
    (sum, a, i) => sum + share.reduce((inner, b, j) => inner + a * b * covarianceHz[i]![j]!, 0),
    0,
  );
  const noiseRms = Math.sqrt(found.variance * 2 * noiseSamples(subband));
  return {
    partialNumber: request.partialNumber,
    hz,
    standardUncertaintyHz: Math.sqrt(variance),
    components: own.map(({ hz, standardUncertaintyHz, dampingPerS, amplitude, relativeUncertainty }) => ({
      hz,
      standardUncertaintyHz,
      dampingPerS,
      amplitude,
      relativeUncertainty,
    })),
    covarianceHz,
    snrDb: 20 * Math.log10(strongest.amplitude / (2 * Math.sqrt(2 * found.variance))),
    audibleS: usedLength / rateHz,
    evidence: found.evidence,
    noiseRms,
    explainedShare: 1 - found.fit.residualEnergy / Math.max(energyOf(series), 1e-300),
    subband,
    usedLength,
  };
}

/** A partial's amplitude has to be known to about a quarter, or it is not there. */
const LEAST_DETECTED = 0.25;

/** How many input samples' noise one value of the subband averages over, for white noise. */
function noiseSamples(subband: Subband): number {
  // Three cascaded moving averages of length N: Σh² = 0.55/N (the quintic B-spline's value at zero), then a plain mean.
  const cascade = 0.55 / subband.averageLength;
  return subband.blockLength === 1 ? 1 / cascade : subband.averageLength * subband.blockLength;
}

/** Components that belong to the partial: near the prediction, decaying like a string, not hum. Strongest first. */
function ownComponents<T extends FittedComponent>(all: readonly T[], request: PartialRequest): T[] {
  const sorted = [...all].sort((a, b) => firstSecondEnergy(b) - firstSecondEnergy(a));
  const near = sorted.filter((component) => !isHum(component));
  const main = near.find((component) => Math.abs(component.hz - request.predictedHz) <= request.gateHz);
  if (!main) return [];
  const reachHz = BEAT_REACH_HZ + MISTUNING_REACH * main.hz;
  return [main, ...near.filter((other) => other !== main && Math.abs(other.hz - main.hz) <= reachHz)];
}

const MAINS_HZ = [50, 60];

/** A tone that does not decay and sits on a multiple of the mains frequency. */
function isHum(component: FittedComponent): boolean {
  if (component.dampingPerS > 0.15) return false;
  return MAINS_HZ.some((mains) => Math.abs(component.hz - mains * Math.round(component.hz / mains)) < 0.3);
}

/** Energy that a component puts into the first second, relative to A²/2·1 s. */
export function firstSecondEnergy(component: { amplitude: number; dampingPerS: number }): number {
  const rate = 2 * Math.max(component.dampingPerS, 1e-6);
  return (component.amplitude ** 2 * (1 - Math.exp(-rate))) / rate;
}

/**
 * The partial's frequency is the components' mean, weighted by the cube of their energy in the first second: the strongest rules
 * where there is one, and the figure does not jump between two equal ones from visit to visit.
 */
function pitchShares(components: readonly FittedComponent[]): number[] {
  const energies = components.map(firstSecondEnergy);
  const largest = Math.max(...energies);
  const cubes = energies.map((energy) => (energy / largest) ** 3);
  const total = cubes.reduce((sum, cube) => sum + cube, 0);
  return cubes.map((cube) => cube / total);
}

/**
 * How many values of the subband hold tone: up to where its power, smoothed, has sunk to the quietest tenth's level. What follows is
 * noise and only adds chances of finding components that are not there.
 */
function audibleLength(subband: Subband): number {
  const length = subband.re.length;
  const span = Math.max(4, Math.round(0.15 * subband.rateHz));
  if (length <= 3 * span) return length;
  const powers: number[] = [];
  for (let from = 0; from + span <= length; from += span) {
    let sum = 0;
    for (let m = from; m < from + span; m++) sum += subband.re[m]! ** 2 + subband.im[m]! ** 2;
    powers.push(sum / span);
  }
  const floor = [...powers].sort((a, b) => a - b)[Math.floor(powers.length / 10)]!;
  const last = powers.findLastIndex((power) => power > 2.5 * floor);
  return Math.min(length, Math.max(3 * span, (last + 3) * span));
}
