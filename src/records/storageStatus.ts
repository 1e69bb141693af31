/** How much room the browser gives, and whether it may throw the records away when a disk fills up. */

export type StorageStatus = {
  /** Bytes, by the browser's estimate; null where it does not say. */
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** True: the browser keeps the records until the user deletes them. Null where it does not say. */
  readonly isPersistent: boolean | null;
};

type StorageSource = Partial<Pick<StorageManager, 'estimate' | 'persist' | 'persisted'>>;

/** Old browsers and pages that were not loaded over a secure connection have no `navigator.storage`. */
function browserStorage(): StorageSource {
  return (globalThis.navigator as { storage?: StorageSource } | undefined)?.storage ?? {};
}

export async function storageStatus(storage: StorageSource = browserStorage()): Promise<StorageStatus> {
  const estimate = await orNull(storage.estimate?.());
  const isPersistent = await orNull(storage.persisted?.());
  return { usedBytes: estimate?.usage ?? null, quotaBytes: estimate?.quota ?? null, isPersistent };
}

/** Asks the browser to keep the records for good. False: it refused, so a backup file is the only safety. Null: it cannot be asked. */
export function askForPersistence(storage: StorageSource = browserStorage()): Promise<boolean | null> {
  return orNull(storage.persist?.());
}

/** Some browsers refuse these questions in private windows: no answer is an answer here. */
async function orNull<Value>(question: Promise<Value> | undefined): Promise<Value | null> {
  if (!question) return null;
  return question.catch(() => null);
}
