/**
 * The connection to the database among several pages of this program. A page that brings a newer version of the records asks all
 * others to let go; one that is in the middle of something holds on until it is done, and the other waits. Nothing is written over.
 */
import type { RecordsDatabase } from './database.ts';

export type Connection = {
  /** Keeps the database open for this page while something is under way. Call what comes back when it is done. */
  holdOpen(): () => void;
  /** Told once the database is closed for this page, because another page brought a newer version of the records. */
  onClosed(listener: () => void): () => void;
};

export function createConnection(database: RecordsDatabase): Connection {
  const holders = new Set<symbol>();
  const listeners = new Set<() => void>();
  let isAsked = false;
  let isClosed = false;
  const close = () => {
    if (isClosed) return;
    isClosed = true;
    database.close({ disableAutoOpen: true }); // opening again here would open the newer version with this program
    for (const listener of listeners) listener();
  };
  database.on('versionchange', () => {
    isAsked = true;
    if (holders.size === 0) close();
    return false; // Dexie's own answer would be to close at once
  });
  return {
    holdOpen: () => {
      const holder = Symbol('holder');
      holders.add(holder);
      return () => {
        holders.delete(holder);
        if (isAsked && holders.size === 0) close();
      };
    },
    onClosed: (listener) => {
      if (isClosed) listener();
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
