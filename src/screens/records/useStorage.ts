import { useCallback, useEffect, useState } from 'react';
import type { Records } from '../../records/records.ts';
import { askForPersistence, type StorageStatus, storageStatus } from '../../records/storageStatus.ts';

export type Storage = {
  readonly status: StorageStatus | null;
  readonly soundByteCount: number | null;
  /** True after the browser was asked to keep the records and did not agree. */
  readonly wasRefused: boolean;
  readonly ask: () => Promise<void>;
};

export function useStorage(records: Records): Storage {
  const [status, setStatus] = useState<StorageStatus | null>(null);
  const [soundByteCount, setSoundByteCount] = useState<number | null>(null);
  const [wasRefused, setRefused] = useState(false);
  const read = useCallback(async () => setStatus(await storageStatus()), []);
  useEffect(() => {
    void read();
    return records.observe(
      () => records.soundSizes(),
      ({ byteCount }) => setSoundByteCount(byteCount),
      () => setSoundByteCount(null),
    );
  }, [records, read]);
  const ask = async () => {
    const isGranted = await askForPersistence();
    setRefused(isGranted !== true);
    await read();
  };
  return { status, soundByteCount, wasRefused, ask };
}
