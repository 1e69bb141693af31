import { useRef, useState } from 'react';
import type { Take } from '../piano/instrument.ts';
import type { Records } from '../records/records.ts';
import { storageStatus } from '../records/storageStatus.ts';
import type { WriteFailureReason } from '../records/writeOutcome.ts';
import { soundKept } from '../ui/soundKept.ts';
import type { TakeMessage } from '../workers/listeningMessages.ts';
import { sharedTakeWorker } from '../workers/sharedTakeWorker.ts';
import { hasRoomForSound, type SoundToKeep, soundToKeep } from './soundToKeep.ts';

export type SoundDropped = { readonly reason: WriteFailureReason; readonly detail: string };

export type SoundStore = {
  /** The last sound that was not kept. */
  readonly dropped: SoundDropped | null;
  /** For a take whose figures are stored. Never rejects, never waits for anything that figures wait for. */
  readonly keep: (take: Take, told: TakeMessage) => void;
  readonly settled: () => Promise<void>;
};

/** Keeps the sounds of takes, one after the other, behind the writing of figures. */
export function useSoundStore(records: Records): SoundStore {
  const [dropped, setDropped] = useState<SoundDropped | null>(null);
  const queue = useRef<Promise<void>>(Promise.resolve());
  const keep = (take: Take, told: TakeMessage) => {
    const toKeep = soundToKeep(take, told, soundKept.read());
    if (!toKeep) return;
    queue.current = queue.current.then(async () => setDropped(await keepSound(records, toKeep)));
  };
  return { dropped, keep, settled: () => queue.current };
}

/** Null where it was kept. */
async function keepSound(records: Records, { samples, sound }: SoundToKeep): Promise<SoundDropped | null> {
  try {
    if (!hasRoomForSound(await storageStatus())) return { reason: 'storage-full', detail: '' };
    const bytes = await sharedTakeWorker().ask({ kind: 'encode', samples, sampleRateHz: sound.sampleRateHz });
    const outcome = await records.saveSound({ ...sound, encoding: 'flac', bytes });
    return outcome.written ? null : { reason: outcome.reason, detail: outcome.message };
  } catch (error) {
    return { reason: 'failed', detail: error instanceof Error ? error.message : String(error) };
  }
}
