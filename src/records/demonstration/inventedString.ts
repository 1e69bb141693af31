/** One string of an invented piano: how stiff it is, where a tuner sets it, and whether it beats by itself. */
import { centsToHz } from '../../piano/cents.ts';
import { midiToHz } from '../../piano/note.ts';
import type { Beat } from '../../piano/reading.ts';
import { scaleInharmonicity } from './inventedScale.ts';
import { inventRows } from './inventSchedule.ts';
import type { InstrumentPlan } from './plans.ts';
import type { SeededNumbers } from './seededNumbers.ts';

export type InventedString = {
  readonly midi: number;
  /** B·f0² in Hz², which stays as it is when the tension changes. */
  readonly stiffnessHz2: number;
  /** Where a tuner sets partial 1, at 440 Hz. */
  readonly targetHz: number;
  readonly falseBeat: { readonly beat: Beat; readonly partialNumbers: readonly number[] } | null;
};

/** @param inharmonicityB at the pitch where a tuner sets it */
export function inventedString(
  plan: InstrumentPlan,
  midi: number,
  inharmonicityB: number,
  numbers: SeededNumbers,
): InventedString {
  const targetHz = centsToHz(stretchCents(midi), midiToHz(midi, 440));
  return {
    midi,
    stiffnessHz2: (inharmonicityB * targetHz ** 2) / (1 + inharmonicityB),
    targetHz,
    falseBeat: midi >= 72 && numbers.uniform() < plan.falseBeatShare ? inventedFalseBeat(midi, numbers) : null,
  };
}

export type InharmonicityAt = (midi: number) => number;

/** What its scale makes of it, or an average piano's; either way with a slow departure of its own. */
export function inventInharmonicity({ scale, instrument }: InstrumentPlan, numbers: SeededNumbers): InharmonicityAt {
  const wave = stiffnessWave(numbers);
  if (!scale) return (midi) => averageInharmonicity(midi) * wave(midi);
  const rows = new Map(inventRows(scale, instrument).map((row) => [row.midi, scaleInharmonicity(row)]));
  return (midi) => (rows.get(midi) ?? averageInharmonicity(midi)) * wave(midi) ** SCALE_DEPARTURE;
}

/** A formula knows a piano's own scale better than an average does: within a tenth or so. Chosen. */
const SCALE_DEPARTURE = 0.5;

/**
 * B over the compass of an average piano: the sum of a falling bass and a rising treble exponential. The bass is taken at 0.6 of it, as in
 * a long grand.
 * Source: F. Rigaud, B. David and L. Daudet, "A parametric model of piano tuning", DAFx-11 (2011). Constants: secondary.
 */
function averageInharmonicity(midi: number): number {
  return Math.exp(9.26e-2 * midi - 13.64) + 0.6 * Math.exp(-8.47e-2 * midi - 5.82);
}

/** An instrument's own departure, slow along the compass: a factor within about 0.8 to 1.25. */
function stiffnessWave(numbers: SeededNumbers): InharmonicityAt {
  const phases = [numbers.between(0, 2 * Math.PI), numbers.between(0, 2 * Math.PI)] as const;
  const level = numbers.between(-0.08, 0.08);
  return (midi) => Math.exp(level + 0.08 * Math.sin(midi / 9 + phases[0]) + 0.05 * Math.sin(midi / 4 + phases[1]));
}

/** The usual stretch of partial 1: some 12 cents low at A0, 26 cents high at C8, flat in the middle. Invented in that shape. */
function stretchCents(midi: number): number {
  const octavesFromA4 = (midi - 69) / 12;
  return octavesFromA4 > 0 ? 0.8 * octavesFromA4 ** 2.95 : -0.42 * (-octavesFromA4) ** 2.4;
}

function inventedFalseBeat(midi: number, numbers: SeededNumbers): InventedString['falseBeat'] {
  const highest = partialNumbersHeard(midi).at(-1) ?? 1;
  const first = Math.min(highest, numbers.uniform() < 0.6 ? 1 : 2);
  const partialNumbers = first < highest && numbers.uniform() < 0.4 ? [first, first + 1] : [first];
  // Too slow a beat is over before it shows where the tone is short.
  const rateHz = numbers.between(1.4, 4) / Math.min(2, slowDecayTimeS(midi, 1));
  return {
    beat: { rateHz, rateStandardUncertaintyHz: 0.02 * rateHz, depthDb: numbers.between(3, 11) },
    partialNumbers,
  };
}

/** Twelve partials at the bottom, where the first two are too weak to hear, two at the top. */
export function partialNumbersHeard(midi: number): number[] {
  const count = Math.max(2, Math.min(12, Math.round(14 - (midi - 21) / 7.25)));
  const first = midi < 28 ? 3 : midi < 36 ? 2 : 1;
  return Array.from({ length: count }, (_, index) => first + index);
}

/** Time for 60 dB of the prompt sound: 22 s at A0, 4 s at C4, half a second at C8, less for higher partials. Invented in that order. */
export function promptDecayTimeS(midi: number, partialNumber: number): number {
  return (22 * 2 ** (-(midi - 21) / 16)) / (1 + 0.1 * (partialNumber - 1));
}

/** The aftersound lives three times as long. */
export function slowDecayTimeS(midi: number, partialNumber: number): number {
  return 3 * promptDecayTimeS(midi, partialNumber);
}
