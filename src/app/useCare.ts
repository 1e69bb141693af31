import { useEffect, useState } from 'react';
import { BACKUP_SETTINGS, type BackupAge, backupAge, isBackupDue } from '../records/backupAge.ts';
import type { Records } from '../records/records.ts';
import { type StorageStatus, storageStatus } from '../records/storageStatus.ts';
import type { Route } from '../ui/routes.ts';

/** Where somebody decides what to do next, and nothing is under way. */
const CALM: readonly Route['screen'][] = ['workshop', 'instrument', 'visit'];
const PUT_OFF_DAYS = 7;
/** After the records were opened: what is on the screen comes first. */
const PURGE_AFTER_MS = 20_000;
const MEETS_AFTER_MS = 3_000;

export type Care = {
  /** Null while a backup is not due. */
  readonly backup: BackupAge | null;
  readonly storage: StorageStatus | null;
  readonly putOff: () => Promise<void>;
};

/** Looks after the records: whether a backup is due, whether there is room, and what has lain in the bin long enough. */
export function useCare(records: Records, route: Route): Care {
  const [backup, setBackup] = useState<BackupAge | null>(null);
  const [storage, setStorage] = useState<StorageStatus | null>(null);
  const { screen } = route;
  useEffect(() => {
    if (!CALM.includes(screen)) {
      setBackup(null);
      setStorage(null);
      return;
    }
    storageStatus().then(setStorage, () => setStorage(null));
    return records.observe(
      () => backupAge(records),
      (age) => setBackup(isBackupDue(age, new Date()) ? age : null),
      () => setBackup(null),
    );
  }, [records, screen]);
  useEffect(() => {
    const timer = setTimeout(() => void records.purgeOld(new Date()).then(tellFailure, tellFailure), PURGE_AFTER_MS);
    return () => clearTimeout(timer);
  }, [records]);
  useEffect(() => {
    const timer = setTimeout(() => void meetLater(records).then(tellMeeting, tellMeeting), MEETS_AFTER_MS);
    return () => clearTimeout(timer);
  }, [records]);
  const putOff = async () => {
    const until = new Date(Date.now() + PUT_OFF_DAYS * 86_400_000).toISOString();
    await records.saveSetting(BACKUP_SETTINGS.putOffUntil, until);
  };
  return { backup, storage, putOff };
}

async function meetLater(records: Records): Promise<unknown> {
  const { meetQuietly } = await import('../screens/records/meetInFolder.ts');
  return meetQuietly(records);
}

/** Nobody asked for it, so nobody is told; the Records screen says what became of it when asked. */
function tellMeeting(outcome: unknown): void {
  if (outcome instanceof Error) console.info('The shared folder was not met:', outcome);
}

/** Nothing is lost by it: what should have gone stays in the bin and is tried again next time. */
function tellFailure(outcome: unknown): void {
  const isWritten = typeof outcome === 'object' && outcome !== null && 'written' in outcome && outcome.written === true;
  if (!isWritten) console.info('Old entries of the bin were not taken away:', outcome);
}
