/** Which note to expect: the one that the page named, else where the walk up or down the compass goes next. */
import type { TakeOutcome } from '../piano/reading.ts';
import { nextOfWalk } from '../survey/walk.ts';
import type { SegmentToMeasure } from './listeningMessages.ts';

type Struck = Pick<SegmentToMeasure, 'settings' | 'settingsNumber'>;

export type Walk = {
  readonly expectedMidi: (struck: Struck) => number | undefined;
  readonly hear: (outcome: TakeOutcome) => void;
};

/** What the page named holds until a good take was heard after it. */
export function createWalk(): Walk {
  const walkedMidi: number[] = [];
  let settingsNumber = -1;
  let namedMidi: number | undefined;
  return {
    expectedMidi: (struck) => {
      if (struck.settingsNumber !== settingsNumber) namedMidi = struck.settings.expectedMidi;
      settingsNumber = struck.settingsNumber;
      return namedMidi ?? nextOfWalk(walkedMidi);
    },
    hear: (outcome) => {
      if (!outcome.found || !outcome.reading.quality.isUsable) return;
      walkedMidi.push(outcome.reading.midi);
      namedMidi = undefined;
    },
  };
}
