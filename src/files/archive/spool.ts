/** Keeps packed bytes until their turn comes to be written: outside the memory, since they may be many. */
export type Spool = {
  add(bytes: Uint8Array): Promise<void>;
  /** All of them, from front to back; nothing is added any more. */
  pieces(): AsyncIterable<Uint8Array>;
  /** Nothing of it stays. */
  discard(): Promise<void>;
};
