/** A reading of one string, with the beats that a test wants on its partials. */
import { midiToHz } from '../../src/piano/note.ts';
import type { NoteReading, PartialReading, StringPosition, TakeFault } from '../../src/piano/reading.ts';

export type BeatOnPartial = { readonly partialNumber: number; readonly rateHz: number; readonly depthDb: number };

export type BeatReadingRecipe = {
  readonly midi?: number;
  readonly stringPosition?: StringPosition;
  readonly offsetCents?: number;
  readonly inharmonicityB?: number | null;
  readonly beats?: readonly BeatOnPartial[];
  /** Of partial 1; each next one is 6 dB weaker. */
  readonly levelDbfs?: number;
  readonly partialCount?: number;
  readonly snrDb?: number;
  readonly durationS?: number;
  readonly decayTimeS?: number;
  readonly lifeTimeS?: number | null;
  readonly faults?: readonly TakeFault[];
  /** 'none' or 'undetermined' where there is no beat. */
  readonly quietKind?: 'none' | 'undetermined';
};

export function beatReading(recipe: BeatReadingRecipe = {}): NoteReading {
  const { midi = 84, stringPosition = 2, offsetCents = 0, beats = [], faults = [], snrDb = 40 } = recipe;
  const partial1Hz = midiToHz(midi, 440) * 2 ** (offsetCents / 1200);
  const kind = beats.length > 0 ? 'false beat' : (recipe.quietKind ?? 'none');
  return {
    midi,
    stringPosition,
    onsetS: 0,
    durationS: recipe.durationS ?? 4,
    pitchStandardHz: 440,
    partial1Hz,
    partial1StandardUncertaintyHz: 0.01,
    partial1Source: 'measured',
    f0Hz: null,
    f0StandardUncertaintyHz: null,
    inharmonicityB: recipe.inharmonicityB ?? null,
    inharmonicityBStandardUncertainty: recipe.inharmonicityB == null ? null : recipe.inharmonicityB * 0.005,
    offsetCents,
    offsetStandardUncertaintyCents: 0.05,
    partials: partialsOf(recipe, partial1Hz),
    beating: { kind, rateHz: null, depthDb: null, partialNumbers: [], reason: '' },
    unisonStringsCents: null,
    lifeTimeS: recipe.lifeTimeS ?? null,
    quality: { snrDb, isClipped: false, isUsable: faults.length === 0, faults },
  };
}

function partialsOf(recipe: BeatReadingRecipe, partial1Hz: number): PartialReading[] {
  const { levelDbfs = -20, partialCount = 4, snrDb = 40, decayTimeS = 6, beats = [] } = recipe;
  return Array.from({ length: partialCount }, (_, index) => ({
    partialNumber: index + 1,
    frequencyHz: (index + 1) * partial1Hz,
    frequencyStandardUncertaintyHz: 0.01,
    levelDbfs: levelDbfs - 6 * index,
    snrDb: snrDb - 6 * index,
    promptDecayTimeS: decayTimeS,
    afterDecayTimeS: null,
    beats: beats
      .filter(({ partialNumber }) => partialNumber === index + 1)
      .map(({ rateHz, depthDb }) => ({ rateHz, depthDb, rateStandardUncertaintyHz: 0.01 })),
    components: [],
  }));
}
