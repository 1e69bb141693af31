import { useEffect, useRef, useState } from 'react';
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
  /** Records with two versions that wait for somebody to choose. */
  readonly rivalCount: number;
  readonly putOff: () => Promise<void>;
};

/** Looks after the records: whether a backup is due, whether there is room, and what has lain in the bin long enough. */
export function useCare(records: Records, route: Route): Care {
  const [backup, setBackup] = useState<BackupAge | null>(null);
  const [storage, setStorage] = useState<StorageStatus | null>(null);
  const [rivalCount, setRivalCount] = useState(0);
  const { screen } = route;
  useEffect(() => {
    if (!CALM.includes(screen)) {
      setBackup(null);
      setStorage(null);
      setRivalCount(0);
      return;
    }
    storageStatus().then(setStorage, () => setStorage(null));
    const stopCounting = records.observe(
      async () => (await records.listRivals()).length,
      setRivalCount,
      () => setRivalCount(0),
    );
    const stopAging = records.observe(
      () => backupAge(records),
      (age) => setBackup(isBackupDue(age, new Date()) ? age : null),
      () => setBackup(null),
    );
    return () => {
      stopCounting();
      stopAging();
    };
  }, [records, screen]);
  useOnceCalm(records, screen, PURGE_AFTER_MS, () => records.purgeOld(new Date()).then(tellFailure, tellFailure));
  useOnceCalm(records, screen, MEETS_AFTER_MS, () => meetLater(records).then(tellMeeting, tellMeeting));
  const putOff = async () => {
    const until = new Date(Date.now() + PUT_OFF_DAYS * 86_400_000).toISOString();
    await records.saveSetting(BACKUP_SETTINGS.putOffUntil, until);
  };
  return { backup, storage, rivalCount, putOff };
}

/** Does something once for these records, on a screen where nothing is under way, some time after it was opened. */
function useOnceCalm(records: Records, screen: Route['screen'], afterMs: number, work: () => Promise<void>): void {
  const doneFor = useRef<Records | null>(null);
  const isCalm = CALM.includes(screen);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the work is for the records, and is a new function each time
  useEffect(() => {
    if (!isCalm || doneFor.current === records) return;
    const timer = setTimeout(() => {
      doneFor.current = records;
      void work();
    }, afterMs);
    return () => clearTimeout(timer);
  }, [records, isCalm]);
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
