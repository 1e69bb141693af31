/** Writes the invented workshop into the records, an instrument at a time. */
import type { Records } from '../records.ts';
import type { WriteOutcome } from '../writeOutcome.ts';
import { demonstrationRecords } from './demonstrationRecords.ts';
import { inventedSounds } from './inventedSounds.ts';

/** The workshop that is offered to look around in; another seed gives another one of the same kind. */
export const DEMONSTRATION_SEED = 1908;

/**
 * Installing it again changes nothing: the same seed gives the same ids. Where a write fails the rest is not attempted, and
 * `removeDemonstration` takes away what had been written.
 * @param onProgress called with the share done, from 0 to 1
 */
export async function installDemonstration(
  records: Pick<Records, 'writeRecordSet' | 'saveSound'>,
  onProgress: (share: number) => void = () => undefined,
  seed: number = DEMONSTRATION_SEED,
): Promise<WriteOutcome> {
  const sets = demonstrationRecords(seed);
  onProgress(0);
  for (const [index, set] of sets.entries()) {
    const outcome = await records.writeRecordSet(set);
    if (!outcome.written) return outcome;
    for (const sound of inventedSounds(set)) {
      const kept = await records.saveSound(sound);
      if (!kept.written) return kept;
    }
    onProgress((index + 1) / sets.length);
  }
  return { written: true };
}
