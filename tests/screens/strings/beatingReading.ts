import type { NoteReading, PartialReading, StringPosition } from '../../../src/piano/reading.ts';
import { readingAt } from '../plainReading.ts';

type Wish = { readonly rateHz?: number; readonly depthDb?: number; readonly stringPosition?: StringPosition };

/** A string with two strong partials, the first of which beats where a rate is given. Not a model of a string. */
export function beatingReading(midi: number, { rateHz, depthDb = 9, stringPosition = 2 }: Wish = {}): NoteReading {
  const beats = rateHz === undefined ? [] : [{ rateHz, rateStandardUncertaintyHz: 0.01, depthDb }];
  const plain = readingAt(midi, 0, { stringPosition });
  const kind = rateHz === undefined ? 'none' : 'false beat';
  return {
    ...plain,
    partials: [partial(1, plain.partial1Hz, beats), partial(2, 2 * plain.partial1Hz, [])],
    beating: { ...plain.beating, kind, rateHz: rateHz ?? null },
  };
}

function partial(partialNumber: number, frequencyHz: number, beats: PartialReading['beats']): PartialReading {
  return {
    partialNumber,
    frequencyHz,
    frequencyStandardUncertaintyHz: 0.01,
    levelDbfs: -20 - 3 * partialNumber,
    snrDb: 45,
    promptDecayTimeS: 6,
    afterDecayTimeS: 12,
    beats,
    components: [],
  };
}
