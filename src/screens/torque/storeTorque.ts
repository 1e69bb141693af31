/** Stores one reading, or takes one away, with the way back. */
import { formatTorqueInBoth } from '../../piano/formatTorque.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { deleteWithUndo } from '../../ui/deleteWithUndo.ts';
import { texts } from '../../ui/texts.ts';
import type { WriteFaultValue } from '../../ui/WriteFault.tsx';
import { pinName } from './deskWords.ts';

export type StoredTorque = { readonly stored: true; readonly undo: () => Promise<WriteFaultValue | null> };

/**
 * Undoing takes a new reading away and puts a replaced one back.
 * @param former what stood in its place, with the same id
 */
export async function storeTorque(
  records: Pick<Records, 'saveTorque' | 'deleteRows'>,
  reading: TorqueReading,
  former: TorqueReading | undefined,
): Promise<StoredTorque | (WriteFailure & { readonly stored: false })> {
  const outcome = await records.saveTorque(reading);
  if (!outcome.written) return { ...outcome, stored: false };
  const undo = async () => {
    const undone = former
      ? await records.saveTorque(former)
      : await records.deleteRows([{ table: 'torques', id: reading.id }]);
    return undone.written ? null : undone;
  };
  return { stored: true, undo };
}

/** Null where it is gone, else why not. */
export function removeTorque(
  records: Pick<Records, 'deleteRows' | 'restore'>,
  reading: TorqueReading,
): Promise<WriteFaultValue | null> {
  const message = texts.torque.desk.removed(pinName(reading), formatTorqueInBoth(reading.torqueNm));
  return deleteWithUndo(records, [{ table: 'torques' as const, id: reading.id }], message);
}
