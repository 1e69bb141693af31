/** Writes the invented workshop into the records, an instrument at a time. */
import { DEMONSTRATION_BEGUN } from '../demonstrationRows.ts';
import type { RecordSet } from '../recordSet.ts';
import type { Records } from '../records.ts';
import type { WriteOutcome } from '../writeOutcome.ts';
import { demonstrationRecords } from './demonstrationRecords.ts';
import { inventedSounds } from './inventedSounds.ts';

/** The workshop that is offered to look around in; another seed gives another one of the same kind. */
export const DEMONSTRATION_SEED = 1908;

type Place = Pick<Records, 'instrument' | 'writeRecordSet' | 'sound' | 'saveSound' | 'saveSetting'>;

/**
 * Installing it again completes what an interruption left out and changes nothing of what is there: the same seed gives the same ids, and
 * an instrument is written whole or not at all. Where a write fails the rest is not attempted, and `removeDemonstration` takes away what
 * had been written.
 * @param onProgress called with the share done, from 0 to 1
 */
export async function installDemonstration(
  records: Place,
  onProgress: (share: number) => void = () => undefined,
  seed: number = DEMONSTRATION_SEED,
): Promise<WriteOutcome> {
  const sets = demonstrationRecords(seed);
  onProgress(0);
  let outcome = await records.saveSetting(DEMONSTRATION_BEGUN, true);
  for (const [index, set] of sets.entries()) {
    if (outcome.written) outcome = await installOne(records, set);
    if (!outcome.written) return outcome;
    onProgress((index + 1) / sets.length);
  }
  return records.saveSetting(DEMONSTRATION_BEGUN, null);
}

async function installOne(records: Place, set: RecordSet): Promise<WriteOutcome> {
  const [instrument] = set.instruments;
  const isThere = instrument !== undefined && (await records.instrument(instrument.id)) !== undefined;
  const outcome: WriteOutcome = isThere ? { written: true } : await records.writeRecordSet(set);
  if (!outcome.written) return outcome;
  for (const sound of inventedSounds(set)) {
    const kept = (await records.sound(sound.id)) ? outcome : await records.saveSound(sound);
    if (!kept.written) return kept;
  }
  return outcome;
}
