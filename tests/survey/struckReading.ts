/** A reading of one strike of a string that stands at C4 or elsewhere, with one partial. */
import { centsToHz } from '../../src/piano/cents.ts';
import { midiToHz } from '../../src/piano/note.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import { plainReading } from './plainReading.ts';

export type Strike = {
  readonly midi?: number;
  readonly onsetS?: number;
  readonly cents: number;
  /** Standard uncertainty of the fit. */
  readonly ownCents?: number;
  readonly levelDbfs?: number;
  readonly source?: NoteReading['partial1Source'];
  readonly isUsable?: boolean;
};

export function struckReading(strike: Strike): NoteReading {
  const {
    midi = 60,
    cents,
    ownCents = 0.01,
    levelDbfs = -20,
    source = 'measured',
    isUsable = true,
    onsetS = 0,
  } = strike;
  const partial1Hz = centsToHz(cents, midiToHz(midi, 440));
  const uncertaintyHz = centsToHz(ownCents, partial1Hz) - partial1Hz;
  const partial = {
    partialNumber: 1,
    frequencyHz: partial1Hz,
    frequencyStandardUncertaintyHz: uncertaintyHz,
    levelDbfs,
    snrDb: 40,
    promptDecayTimeS: null,
    afterDecayTimeS: null,
    beats: [],
    components: [],
  };
  return {
    ...plainReading({ midi, onsetS, uncertaintyHz, isUsable }),
    partial1Hz,
    partial1Source: source,
    offsetCents: cents,
    offsetStandardUncertaintyCents: ownCents,
    partials: [partial],
  };
}
