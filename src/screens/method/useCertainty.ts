import { useEffect, useState } from 'react';
import { seededSimulation } from '../../stability/seededRandom.ts';
import { errorsInSigmas, trialSound } from '../../survey/certaintyTrial.ts';
import { measured, measureSample } from './sampleNotes.ts';

/** Some ten figures each: enough that the shares are good to about two in a hundred. */
export const SOUND_COUNT = 40;
const SEED = 2026;

export type Certainty = {
  readonly doneCount: number;
  readonly errors: readonly number[];
  readonly fault: string | null;
};

/** Sounds are measured one after another while the page is looked at; the picture grows with them. */
export function useCertainty(): Certainty {
  const [certainty, setCertainty] = useState<Certainty>({ doneCount: 0, errors: [], fault: null });
  useEffect(() => {
    let isShown = true;
    const run = async () => {
      // The worker does one thing after another: what has a single picture comes first.
      await Promise.allSettled([measureSample('a4'), measureSample('c6')]);
      const random = seededSimulation(SEED);
      for (let index = 0; index < SOUND_COUNT && isShown; index++) {
        const sound = trialSound(random);
        // Taken over by the worker, so it is kept apart from the truth.
        const reading = await measured(sound.samples, sound.sampleRateHz, sound.onsetIndex);
        const found = errorsInSigmas(sound, reading);
        if (isShown)
          setCertainty((before) => ({ ...before, doneCount: index + 1, errors: [...before.errors, ...found] }));
      }
    };
    run().catch((error: unknown) => {
      const fault = error instanceof Error ? error.message : String(error);
      if (isShown) setCertainty((before) => ({ ...before, fault }));
    });
    return () => {
      isShown = false;
    };
  }, []);
  return certainty;
}
