/** A reading of one string with partials where the test wants them. */
import { centsToHz } from '../../src/piano/cents.ts';
import { midiToHz } from '../../src/piano/note.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import type { NoteChange } from '../../src/stability/change.ts';

export type StringReadingRecipe = {
  readonly midi?: number;
  readonly stringPosition?: NoteReading['stringPosition'];
  readonly pitchStandardHz?: number;
  readonly inharmonicityB?: number | null;
  /** Number, Hz and standard uncertainty in Hz of each partial. */
  readonly partials?: readonly (readonly [number, number, number])[];
  readonly partial1Hz?: number;
  readonly partial1StandardUncertaintyHz?: number;
};

export function stringReading(recipe: StringReadingRecipe): NoteReading {
  const { midi = 69, stringPosition = 2, pitchStandardHz = 440, inharmonicityB = null, partials = [] } = recipe;
  const partial1Hz = recipe.partial1Hz ?? partials.find(([number]) => number === 1)?.[1] ?? 440;
  return {
    midi,
    stringPosition,
    onsetS: 0,
    durationS: 3,
    pitchStandardHz,
    partial1Hz,
    partial1StandardUncertaintyHz: recipe.partial1StandardUncertaintyHz ?? 0.01,
    partial1Source: 'measured',
    f0Hz: null,
    f0StandardUncertaintyHz: null,
    inharmonicityB,
    inharmonicityBStandardUncertainty: null,
    offsetCents: 1200 * Math.log2(partial1Hz / midiToHz(midi, pitchStandardHz)),
    offsetStandardUncertaintyCents: 0.04,
    partials: partials.map(([partialNumber, frequencyHz, sigmaHz]) => ({
      partialNumber,
      frequencyHz,
      frequencyStandardUncertaintyHz: sigmaHz,
      levelDbfs: -20,
      snrDb: 40,
      promptDecayTimeS: null,
      afterDecayTimeS: null,
      beats: [],
      components: [],
    })),
    beating: { kind: 'none', rateHz: null, depthDb: null, partialNumbers: [], reason: '' },
    unisonStringsCents: null,
    lifeTimeS: null,
    quality: { snrDb: 40, isClipped: false, isUsable: true, faults: [] },
  };
}

/** A reading of a string whose partial 1 alone is known, this many cents from equal temperament at 440 Hz. */
export function partial1Reading(midi: number, offsetCents: number, stringPosition: 0 | 1 | 2 | 3 = 2): NoteReading {
  const partial1Hz = centsToHz(offsetCents, midiToHz(midi, 440));
  const sigmaHz = centsToHz(0.05, partial1Hz) - partial1Hz;
  return stringReading({ midi, stringPosition, partial1Hz, partial1StandardUncertaintyHz: sigmaHz });
}

/** Partials 1 … count of f_n = n·f0·√(1 + B·n²), each with the same standard uncertainty. */
export function stiffPartials(
  f0Hz: number,
  inharmonicityB: number,
  count: number,
  sigmaHz = 0.01,
): [number, number, number][] {
  return Array.from({ length: count }, (_, index) => {
    const number = index + 1;
    return [number, number * f0Hz * Math.sqrt(1 + inharmonicityB * number ** 2), sigmaHz];
  });
}

/** Changes of these cents on neighbouring notes upwards, each read to 0.1 cents. */
export function noteChanges(cents: readonly number[], lowestMidi = 21): NoteChange[] {
  return cents.map((changeCents, index) => ({
    midi: lowestMidi + index,
    stringPosition: 2,
    changeCents,
    standardUncertaintyCents: 0.1,
    method: 'partials',
    partialCount: 5,
  }));
}
