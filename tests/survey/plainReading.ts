/** Readings with as little in them as the survey's bookkeeping looks at. */
import type { TakeId } from '../../src/piano/ids.ts';
import type { NoteReading, StringPosition, TakeFault } from '../../src/piano/reading.ts';

export type PlainReading = {
  readonly midi: number;
  readonly stringPosition?: StringPosition;
  readonly onsetS?: number;
  readonly durationS?: number;
  readonly uncertaintyHz?: number;
  readonly isUsable?: boolean;
  readonly faults?: readonly TakeFault[];
};

export function plainReading(facts: PlainReading): NoteReading {
  const {
    midi,
    stringPosition = 2,
    onsetS = 0,
    durationS = 2,
    uncertaintyHz = 0.01,
    isUsable = true,
    faults = [],
  } = facts;
  return {
    midi,
    stringPosition,
    onsetS,
    durationS,
    pitchStandardHz: 440,
    partial1Hz: 440,
    partial1StandardUncertaintyHz: uncertaintyHz,
    partial1Source: 'measured',
    f0Hz: null,
    f0StandardUncertaintyHz: null,
    inharmonicityB: null,
    inharmonicityBStandardUncertainty: null,
    offsetCents: 0,
    offsetStandardUncertaintyCents: 0.1,
    partials: [],
    beating: { kind: 'none', rateHz: null, depthDb: null, partialNumbers: [], reason: 'No partial beats.' },
    unisonStringsCents: null,
    lifeTimeS: null,
    quality: { snrDb: 40, isClipped: false, isUsable, faults },
  };
}

/** @example takeId(3) // the id 'take-3' */
export function takeId(number: number): TakeId {
  return `take-${number}` as TakeId;
}
