/** Where a walk up the compass has come to: the note after the last good one, until the page says otherwise. */
import type { TakeOutcome } from '../piano/reading.ts';
import type { SegmentToMeasure } from './listeningMessages.ts';

type Struck = Pick<SegmentToMeasure, 'settings' | 'settingsNumber'>;

export type Walk = {
  readonly expectedMidi: (struck: Struck) => number | undefined;
  readonly hear: (struck: Struck, outcome: TakeOutcome) => void;
};

export function createWalk(): Walk {
  let settingsNumber = -1;
  let expected: number | undefined;
  return {
    expectedMidi: (struck) => {
      if (struck.settingsNumber !== settingsNumber) expected = struck.settings.expectedMidi;
      settingsNumber = struck.settingsNumber;
      return expected;
    },
    hear: (struck, outcome) => {
      if (struck.settings.expectedMidi !== undefined && outcome.found && outcome.reading.quality.isUsable)
        expected = outcome.reading.midi + 1;
    },
  };
}
