/** Whether a take can be trusted, and why not. */
import type { TakeFault, TakeQuality } from '../../piano/reading.ts';
import { typicalLifeTimeS } from './decay.ts';
import type { PartialFit } from './partialFit.ts';

export type QualityFacts = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly onsetIndex: number;
  readonly endIndex: number;
  readonly midi: number;
  readonly partials: readonly PartialFit[];
  /** The caller named a note, and another explains the sound far better. */
  readonly isAnotherNote: boolean;
  readonly hasSecondNote: boolean;
  /** Share of the partials' energy that steady decaying tones account for, 0…1. */
  readonly steadyShare: number;
  readonly lifeTimeS: number | null;
};

/** Below this the partials' uncertainties grow past what drift is judged by. */
const LEAST_SNR_DB = 3;
const LEAST_PEAK_DBFS = -66;
/** Flat tops this long, this often, are clipping and not the crest of a low tone. */
const FLAT_RUN = 3;
const FLAT_RUNS_ALLOWED = 2;
/** Speech and song glide; a struck string does not. */
const LEAST_STEADY_SHARE = 0.75;

/** A sound that dies within this share of the time that a note of its height lives is no free string's. */
const LEAST_LIFE_SHARE = 0.15;

function diesLikeAKnock(facts: QualityFacts): boolean {
  return facts.lifeTimeS !== null && facts.lifeTimeS < LEAST_LIFE_SHARE * typicalLifeTimeS(facts.midi);
}

export function judgeQuality(facts: QualityFacts): TakeQuality {
  const { samples, sampleRateHz, onsetIndex, endIndex, partials } = facts;
  const toneEnd = Math.min(endIndex, onsetIndex + Math.round(0.5 * sampleRateHz));
  const toneRms = rmsOf(samples, onsetIndex, toneEnd);
  const noiseRms = noiseOf(partials);
  const snrDb = Math.max(-20, Math.min(120, 20 * Math.log10(toneRms / Math.max(noiseRms, 1e-9))));
  const isClipped = countFlatTops(samples, onsetIndex, endIndex) > FLAT_RUNS_ALLOWED;
  const faults: TakeFault[] = [];
  if (isClipped) faults.push('clipped');
  if (peakDbfs(samples, onsetIndex, endIndex) < LEAST_PEAK_DBFS) faults.push('too-quiet');
  if (snrDb < LEAST_SNR_DB) faults.push('too-noisy');
  if ((endIndex - onsetIndex) / sampleRateHz < leastDurationS(facts.midi)) faults.push('too-short');
  if (facts.isAnotherNote) faults.push('wrong-note');
  if (facts.hasSecondNote) faults.push('two-notes');
  if (facts.steadyShare < LEAST_STEADY_SHARE) faults.push('speech');
  if (diesLikeAKnock(facts)) faults.push('knock');
  return { snrDb, isClipped, isUsable: faults.length === 0, faults };
}

/** Bass tones need longer before their partials separate: about 20 periods, at least a quarter of a second. */
export function leastDurationS(midi: number): number {
  return Math.min(0.7, Math.max(0.25, 20 / (440 * 2 ** ((midi - 69) / 12))));
}

function rmsOf(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += samples[i]! ** 2;
  return Math.sqrt(sum / Math.max(1, to - from));
}

/** Noise as the partials' bands have it: the median, so that one disturbed partial does not count. */
function noiseOf(partials: readonly PartialFit[]): number {
  const sorted = partials.map((partial) => partial.noiseRms).sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

function peakDbfs(samples: Float32Array, from: number, to: number): number {
  let peak = 0;
  for (let i = from; i < to; i++) peak = Math.max(peak, Math.abs(samples[i]!));
  return 20 * Math.log10(Math.max(peak, 1e-9));
}

/** Runs of equal samples at the recording's extreme. */
function countFlatTops(samples: Float32Array, from: number, to: number): number {
  let highest = 0;
  for (let i = from; i < to; i++) highest = Math.max(highest, Math.abs(samples[i]!));
  if (highest < 0.02) return 0;
  const limit = 0.9995 * highest;
  let runs = 0;
  let length = 0;
  for (let i = from; i < to; i++) {
    if (Math.abs(samples[i]!) >= limit) {
      length++;
      if (length === FLAT_RUN) runs++;
    } else length = 0;
  }
  return runs;
}
