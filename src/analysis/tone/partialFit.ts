/**
 * One partial of one take: the damped sinusoids in its neighbourhood, in Hz and seconds, with their covariance, and the frequency
 * that is kept as the partial's.
 */
import { believedCount, type ComponentSearch, type SearchStep, searchComponents } from '../signal/componentSearch.ts';
import { covarianceOf, energyOf, type Series } from '../signal/dampedSinusoids.ts';
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
  /** The components of the largest number tried: those not believed by themselves may be, with other partials' support. */
  readonly suspected: readonly FittedComponent[];
  /** Noise in the band as the standard deviation of one input sample, white-noise equivalent, relative to full scale. */
  readonly noiseRms: number;
  readonly sampleRateHz: number;
  /** Share of the band's energy, beyond the noise that the fit leaves, that the components account for, 0…1. */
  readonly explainedShare: number;
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
  const reachHz = request.gateHz + BEAT_REACH_HZ + MISTUNING_REACH * request.predictedHz;
  const bandRad = Math.min(0.8 * Math.PI, (2 * Math.PI * reachHz) / subband.rateHz);
  const series = { re: subband.re.subarray(0, usedLength), im: subband.im.subarray(0, usedLength) };
  const search = searchComponents(series, { mostComponents: 3, bandRad });
  if (!search) return undefined;
  const weighted = { ...series, weights: search.weights };
  const steps = search.steps.map((step) => describe(request, subband, weighted, step));
  const index = steps.findLastIndex((step, i) => i < believedCount(search) && step !== undefined && isDetected(step));
  const believed = steps[index];
  if (!believed) return undefined;
  const strongest = believed.components[0]!;
  const { variance } = search.steps[index]!;
  const audibleS = usedLength / subband.rateHz;
  const noiseRms = Math.sqrt(variance * 2 * noiseSamples(subband));
  const { sampleRateHz } = request;
  const pitch = averagedPitch(steps, search);
  if (pitch.standardUncertaintyHz > LEAST_CERTAIN * request.gateHz) return undefined;
  return {
    partialNumber: request.partialNumber,
    hz: pitch.hz,
    standardUncertaintyHz: pitch.standardUncertaintyHz,
    components: believed.components,
    covarianceHz: believed.covarianceHz,
    suspected: steps.at(-1)?.components ?? believed.components,
    snrDb: 20 * Math.log10(strongest.amplitude / (2 * Math.sqrt(2 * variance))),
    audibleS,
    sampleRateHz,
    noiseRms,
    explainedShare: believed.explainedShare,
  };
}

type DescribedStep = {
  readonly hz: number;
  readonly varianceHz2: number;
  readonly components: readonly FittedComponent[];
  readonly covarianceHz: readonly (readonly number[])[];
  readonly explainedShare: number;
};

/** One number of components, in Hz and seconds. Undefined where none of them is the partial's or the fit is degenerate. */
function describe(
  request: PartialRequest,
  subband: Subband,
  series: Series,
  { fit, variance }: SearchStep,
): DescribedStep | undefined {
  const size = 4 * fit.components.length;
  const covariance = covarianceOf(series, fit.components);
  if (!covariance) return undefined;
  const hzPerRad = subband.rateHz / (2 * Math.PI);
  const all = fit.components.map((component, index) => {
    const offsetHz = component.frequencyRad * hzPerRad;
    const density = variance * noiseDensityRatio(subband, offsetHz);
    const dampingPerS = component.damping * subband.rateHz;
    // A real tone of amplitude A shows as a complex one of amplitude A/2.
    const size2 = 2 * Math.hypot(component.amplitudeRe, component.amplitudeIm);
    return {
      row: 4 * index,
      density,
      hz: subband.centreHz + offsetHz,
      standardUncertaintyHz: Math.sqrt(density * covariance[4 * index * size + 4 * index]!) * hzPerRad,
      dampingPerS,
      amplitude: size2 / subbandGain(subband, offsetHz, dampingPerS),
      relativeUncertainty: Math.sqrt(density * covariance[(4 * index + 2) * size + 4 * index + 2]!),
    };
  });
  const own = ownComponents(all, request);
  if (own.length === 0) return undefined;
  const covarianceHz = own.map((a) =>
    own.map((b) => Math.sqrt(a.density * b.density) * covariance[a.row * size + b.row]! * hzPerRad * hzPerRad),
  );
  const share = pitchShares(own);
  return {
    hz: own.reduce((sum, component, i) => sum + share[i]! * component.hz, 0),
    varianceHz2: quadraticForm(covarianceHz, share),
    components: own.map(({ row, density, ...component }) => component),
    covarianceHz,
    explainedShare: 1 - fit.residualEnergy / Math.max(energyOf(series), 1e-300),
  };
}

function quadraticForm(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  return matrix.reduce(
    (sum, row, i) => sum + row.reduce((inner, value, j) => inner + value * vector[i]! * vector[j]!, 0),
    0,
  );
}

/**
 * A further component changes the pitch a little even where it cannot be believed yet. So the pitch is the mean over the numbers of
 * components, each weighted by its likelihood against Schwarz's penalty for its four unknowns and a little more, since the best of
 * many places was taken; their spread counts in the uncertainty (J. A. Hoeting et al., Statist. Sci. 14 (1999) 382–417).
 */
const BEST_OF_MANY = 8;

function averagedPitch(steps: readonly (DescribedStep | undefined)[], search: ComponentSearch) {
  let total = 0;
  const scored = steps.flatMap((step, i) => {
    total += i === 0 ? 0 : search.steps[i]!.gain - 4 * Math.log(2 * search.length) - BEST_OF_MANY;
    return step ? [{ step, total }] : [];
  });
  const best = Math.max(...scored.map((entry) => entry.total));
  const weights = scored.map((entry) => Math.exp(0.5 * (entry.total - best)));
  const sum = weights.reduce((a, b) => a + b, 0);
  const hz = scored.reduce((mean, { step }, i) => mean + (weights[i]! / sum) * step.hz, 0);
  const variance = scored.reduce(
    (v, { step }, i) => v + (weights[i]! / sum) * (step.varianceHz2 + (step.hz - hz) ** 2),
    0,
  );
  return { hz, standardUncertaintyHz: Math.sqrt(variance) };
}

/** A partial's amplitude has to be known to about a quarter, or it is not there. */
const LEAST_DETECTED = 0.25;

/** Nor is it where its place is not known to a third of where it may lie: a burst of noise fits a tone that dies at once. */
const LEAST_CERTAIN = 0.33;

function isDetected(step: DescribedStep): boolean {
  return (step.components[0]?.relativeUncertainty ?? Infinity) <= LEAST_DETECTED;
}

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

/** Ratio of powers, 25 dB. */
const SUNK = 300;

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
  // A tone that has not sunk far has no floor yet: its quietest tenth is its end.
  if (Math.max(...powers) < SUNK * floor) return length;
  const last = powers.findLastIndex((power) => power > 2.5 * floor);
  return Math.min(length, Math.max(3 * span, (last + 3) * span));
}
