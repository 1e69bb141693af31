/** Deletes at once and offers the way back, instead of asking first. */
import { texts } from './texts.ts';
import { offerUndo } from './undoOffer.ts';
import type { WriteFaultValue } from './WriteFault.tsx';

type Failure = WriteFaultValue & { readonly written: false };

/** As much of the records as deleting needs. */
export type Deleter<Target> = {
  deleteRows(
    targets: readonly Target[],
  ): Promise<{ readonly written: true; readonly deletionIds: readonly string[] } | Failure>;
  restore(deletionIds: readonly string[]): Promise<{ readonly written: true } | Failure>;
};

/**
 * Null where the rows are in the bin; else why not.
 * @param message what was deleted, for the bar that offers the way back
 */
export async function deleteWithUndo<Target>(
  records: Deleter<Target>,
  targets: readonly Target[],
  message: string,
): Promise<WriteFaultValue | null> {
  const outcome = await records.deleteRows(targets);
  if (!outcome.written) return outcome;
  const undo = async () => {
    const restored = await records.restore(outcome.deletionIds);
    if (!restored.written) offerUndo({ message: texts.records.bin.notRestored(restored.message), undo });
  };
  offerUndo({ message, undo });
  return null;
}
