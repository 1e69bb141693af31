/** One string's tone, as a sum of damped sinusoids whose frequencies are known exactly. */
import { centsToHz } from '../../src/piano/cents.ts';
import { midiToHz } from '../../src/piano/note.ts';
import type { SeededRandom } from './seededRandom.ts';
import {
  partialDecayTimeS,
  typicalAmplitude,
  typicalB,
  typicalDecayTimeS,
  typicalPartialCount,
  typicalStrikePosition,
} from './typicalPiano.ts';

export type FalseBeatSpec = {
  readonly partialNumber: number;
  /** The second component stands this much above the partial (below, if negative). */
  readonly splitHz: number;
  /** Amplitude of the second component over that of the partial. */
  readonly ratio: number;
};

/** A second, slower decay of every partial at the same frequency. */
export type AftersoundSpec = { readonly ratio: number; readonly slowDownFactor: number };

export type StringSpec = {
  readonly midi: number;
  /** Frequency of A4; 440 unless said. */
  readonly pitchStandardHz?: number;
  /** Partial 1 (not F0) against equal temperament at the pitch standard; 0 unless said. */
  readonly offsetCents?: number;
  readonly inharmonicityB?: number;
  /** Time for 60 dB of partial 1; higher partials die sooner. */
  readonly decayTimeS?: number;
  readonly partialCount?: number;
  readonly strikePosition?: number;
  readonly falseBeats?: readonly FalseBeatSpec[];
  /** None unless said. */
  readonly aftersound?: AftersoundSpec | null;
};

export type StringTruth = {
  readonly midi: number;
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  /** Of partials 1, 2, 3 …: f_n = n·f0·√(1 + B·n²). As many as sound below 0.45 times the sample rate. */
  readonly partialHz: readonly number[];
  /** Time for 60 dB of the prompt sound, per partial. */
  readonly decayTimeS: readonly number[];
  /** Before the whole note is scaled to its peak. */
  readonly amplitudes: readonly number[];
};

type Component = { readonly frequencyHz: number; readonly amplitude: number; readonly decayTimeS: number };

export function stringTruth(spec: StringSpec, sampleRateHz: number): StringTruth {
  const inharmonicityB = spec.inharmonicityB ?? typicalB(spec.midi);
  const partial1Hz = centsToHz(spec.offsetCents ?? 0, midiToHz(spec.midi, spec.pitchStandardHz ?? 440));
  const f0Hz = partial1Hz / Math.sqrt(1 + inharmonicityB);
  const strikePosition = spec.strikePosition ?? typicalStrikePosition(spec.midi);
  const numbers = Array.from({ length: spec.partialCount ?? typicalPartialCount(spec.midi) }, (_, index) => index + 1);
  const partialHz = numbers
    .map((n) => n * f0Hz * Math.sqrt(1 + inharmonicityB * n * n))
    .filter((frequencyHz) => frequencyHz <= 0.45 * sampleRateHz);
  return {
    midi: spec.midi,
    f0Hz,
    inharmonicityB,
    partialHz,
    decayTimeS: partialHz.map((_, index) =>
      partialDecayTimeS(spec.decayTimeS ?? typicalDecayTimeS(spec.midi), index + 1),
    ),
    amplitudes: partialHz.map((hz, index) => typicalAmplitude(spec.midi, index + 1, hz, strikePosition)),
  };
}

/** Adds the string's tone to `out`, struck at `onsetIndex` (from 0), with random phases. */
export function addStringTone(
  out: Float64Array,
  onsetIndex: number,
  sampleRateHz: number,
  spec: StringSpec,
  random: SeededRandom,
): StringTruth {
  const truth = stringTruth(spec, sampleRateHz);
  for (const component of componentsOf(spec, truth))
    addDampedSinusoid(out, onsetIndex, sampleRateHz, component, 2 * Math.PI * random.uniform());
  return truth;
}

function componentsOf(spec: StringSpec, truth: StringTruth): Component[] {
  return truth.partialHz.flatMap((frequencyHz, index) => {
    const main = { frequencyHz, amplitude: truth.amplitudes[index]!, decayTimeS: truth.decayTimeS[index]! };
    const split = (spec.falseBeats ?? [])
      .filter((beat) => beat.partialNumber === index + 1)
      .map(({ splitHz, ratio }) => ({
        ...main,
        frequencyHz: frequencyHz + splitHz,
        amplitude: main.amplitude * ratio,
      }));
    const after = spec.aftersound
      ? [
          {
            ...main,
            amplitude: main.amplitude * spec.aftersound.ratio,
            decayTimeS: main.decayTimeS * spec.aftersound.slowDownFactor,
          },
        ]
      : [];
    return [main, ...split, ...after];
  });
}

/** By repeated complex multiplication: one rotation a sample, exact to about 1e-10 rad after a minute. Ends 140 dB down. */
function addDampedSinusoid(
  out: Float64Array,
  onsetIndex: number,
  sampleRateHz: number,
  component: Component,
  phase: number,
) {
  const ratePerSample = Math.log(1000) / (component.decayTimeS * sampleRateHz);
  const step = (2 * Math.PI * component.frequencyHz) / sampleRateHz;
  const decay = Math.exp(-ratePerSample);
  const [stepRe, stepIm] = [decay * Math.cos(step), decay * Math.sin(step)];
  const end = Math.min(out.length, onsetIndex + Math.ceil(Math.log(1e7) / ratePerSample));
  let re = component.amplitude * Math.cos(phase);
  let im = component.amplitude * Math.sin(phase);
  for (let index = onsetIndex; index < end; index += 1) {
    out[index]! += re;
    const nextRe = re * stepRe - im * stepIm;
    im = re * stepIm + im * stepRe;
    re = nextRe;
  }
}
