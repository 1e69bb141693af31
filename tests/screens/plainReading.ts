import { centsToHz } from '../../src/piano/cents.ts';
import { midiToHz } from '../../src/piano/note.ts';
import type { NoteReading, StringPosition, TakeFault } from '../../src/piano/reading.ts';

/** A reading of one bare partial, for tests of what is done with readings. Not a model of a string. */
export function readingAt(
  midi: number,
  offsetCents: number,
  { faults = [], stringPosition = 2 }: { faults?: TakeFault[]; stringPosition?: StringPosition } = {},
): NoteReading {
  const pitchStandardHz = 440;
  return {
    midi,
    stringPosition,
    onsetS: 0,
    durationS: 3,
    pitchStandardHz,
    partial1Hz: centsToHz(offsetCents, midiToHz(midi, pitchStandardHz)),
    partial1StandardUncertaintyHz: 0.01,
    partial1Source: 'measured',
    f0Hz: null,
    f0StandardUncertaintyHz: null,
    inharmonicityB: null,
    inharmonicityBStandardUncertainty: null,
    offsetCents,
    offsetStandardUncertaintyCents: 0.04,
    partials: [],
    beating: { kind: 'undetermined', rateHz: null, depthDb: null, partialNumbers: [], reason: '' },
    unisonStringsCents: null,
    lifeTimeS: null,
    quality: { snrDb: 40, isClipped: false, isUsable: faults.length === 0, faults },
  };
}
